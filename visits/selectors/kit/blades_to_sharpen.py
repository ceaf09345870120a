"""The blades that may be sharpened tonight, and those whose turn has come."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from trimops.accounts.models import Business
from trimops.kernel.scope import Scope
from visits.domain.kit.blade_kinds import BladeFault, BladeState, EdgeBefore
from visits.models import Blade, Van
from visits.selectors.kit.blade_grinding import Grinding, VanGrinding, chosen_van, grinding_ahead
from visits.selectors.kit.blade_words import edge_words
from visits.selectors.kit.van_edges import BladeEdge


@dataclass(frozen=True)
class BladeToSharpen:
    """A blade, a few words on its edge, whether its turn has come, how its edge is as far as is known, and how many
    cows the log has on it."""

    blade: Blade
    words: str
    is_due: bool
    before: EdgeBefore
    cows: int

    @property
    def is_chipped(self) -> bool:
        return self.blade.state == BladeState.OUT_OF_USE and self.blade.fault == BladeFault.CHIPPED


@dataclass(frozen=True)
class BladesToSharpen:
    """Those of one van (None: there is no van; then of the store), and how they are sharpened most often."""

    van: Van | None
    vans: Sequence[VanGrinding]
    blades: Sequence[BladeToSharpen]
    usual_method: str


def blades_to_sharpen(
    scope: Scope, business: Business, now: datetime, wish: int | None, driver: int
) -> BladesToSharpen:
    """Of the van wished for, else of the one that `driver` drives, else the first; with those in the store, which may
    be ground too. Ten queries."""
    grinding = grinding_ahead(scope, business, now)
    chosen = chosen_van(grinding, wish, driver)
    planned = _planned(chosen)
    edges = [*grinding.known.of_van(chosen.van.pk if chosen else None)]
    if chosen:
        edges += grinding.known.of_van(None)
    return BladesToSharpen(
        chosen.van if chosen else None,
        grinding.vans,
        [_line(edge, planned) for edge in edges if _may_be_sharpened(edge.blade)],
        _usual_method(grinding),
    )


def _planned(van: VanGrinding | None) -> set[int]:
    """What is to be ground before the first day that wants it."""
    first = van.first_grinding if van else None
    return {blade.pk for blade in van.to_grind(first)} if van and first else set()


def _line(edge: BladeEdge, planned: set[int]) -> BladeToSharpen:
    is_dull = edge.outlook.is_dull
    is_chipped = edge.blade.fault == BladeFault.CHIPPED
    before = EdgeBefore.DULL if is_dull else EdgeBefore.NOT_SAID
    return BladeToSharpen(
        edge.blade,
        edge_words(edge),
        is_dull or is_chipped or edge.blade.pk in planned or edge.blade.state == BladeState.AT_GRINDING,
        EdgeBefore.CHIPPED if is_chipped else before,
        edge.edge.cows,
    )


def _may_be_sharpened(blade: Blade) -> bool:
    """What is broken in a way that grinding does not mend, lost or retired is not offered."""
    state = BladeState(blade.state)
    return state.may_cut or state is BladeState.AT_GRINDING or blade.fault == BladeFault.CHIPPED


def _usual_method(grinding: Grinding) -> str:
    methods = Counter(
        edge.method.value
        for edges in grinding.known.logs.edges.values()
        for edge in edges
        if edge.method is not None
    )
    return max(sorted(methods), key=lambda method: methods[method], default="")
