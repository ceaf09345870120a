"""What a business has decided about its kit: how sure it wants to be, and how it works with knives."""

from collections.abc import Mapping
from dataclasses import dataclass

from visits.domain.own_figures import FigureRefused, with_own_figures


@dataclass(frozen=True)
class KitFigures:
    """`service_percent`: chance of not running out that orders and vans are loaded for. `review_days`: days between two
    looks at the order list. `dull_percent`: the chance that an edge goes dull mid-visit which is still accepted.
    `cows_per_edge`: what an edge is counted on for before there are edges enough to tell (common practice, no source:
    set your own).
    """

    service_percent: float = 95
    review_days: float = 7
    dull_percent: float = 10
    cows_per_edge: float = 25

    @classmethod
    def from_overrides(cls, own: Mapping[str, object]) -> "KitFigures":
        """The defaults with a business's own figures; `FigureRefused` names what to mend."""
        figures = with_own_figures(cls(), own)
        if not 50 <= figures.service_percent <= 99.9:
            raise FigureRefused("service_percent: must be from 50 to 99.9")
        if not 1 <= figures.review_days <= 90:
            raise FigureRefused("review_days: must be from 1 to 90")
        if not 0.1 <= figures.dull_percent <= 50:
            raise FigureRefused("dull_percent: must be from 0.1 to 50")
        if not 1 <= figures.cows_per_edge <= 1000:
            raise FigureRefused("cows_per_edge: must be from 1 to 1000")
        return figures
