"""What the owner sees of where drives come from: the map in use, what is kept, the last failure, own drives."""

from dataclasses import dataclass
from datetime import datetime

from trimops.accounts.models import Business
from trimops.kernel.scope import Scope
from visits.domain.travel.own_drives import own_drives_factor
from visits.domain.travel.travel_figures import TravelFigures
from visits.domain.travel.travel_source import TravelSource
from visits.models import RoadLeg, RoadTrouble
from visits.selectors.business_figures import figures_of
from visits.selectors.driven_gaps import driven_gaps
from visits.selectors.road_legs import trouble_of
from visits.selectors.roads_in_use import roads_in_use

NEWS = 0.03


@dataclass(frozen=True)
class RoadsStory:
    """`fault` is why a map that was meant is not used; `trouble` the last failure that no answer followed.

    `learned` is (own stretch seen, drives it rests on); None where there are too few.
    """

    source: TravelSource
    kept: int
    newest: datetime | None
    fault: str
    trouble: RoadTrouble | None
    learned: tuple[float, int] | None
    figures: TravelFigures

    @property
    def is_learned_news(self) -> bool:
        """Whether the stretch seen differs from the one in force by more than chance would make it."""
        return self.learned is not None and abs(self.learned[0] - self.figures.own_drives) >= NEWS

    @property
    def is_by_road(self) -> bool:
        return self.source is not TravelSource.ESTIMATE


def roads_story(business: Business, at: datetime) -> RoadsStory:
    """As things stand at `at`. A fixed number of queries."""
    scope, roads = Scope(business.pk), roads_in_use()
    figures = figures_of(scope).planning
    rows = RoadLeg.objects.within(scope).filter(engine=roads.engine.key if roads.engine else "")
    newest = rows.order_by("-asked_at").first()
    return RoadsStory(
        roads.source,
        rows.count(),
        newest.asked_at if newest else None,
        roads.fault,
        trouble_of(scope, roads.engine),
        own_drives_factor(driven_gaps(business, figures, at)),
        figures,
    )
