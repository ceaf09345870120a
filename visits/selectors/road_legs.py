"""What is known of the drives between a business's places by road."""

from collections.abc import Iterator, Sequence
from datetime import datetime

from trimops.kernel.scope import Scope
from visits.domain.travel.drive import CarLeg
from visits.domain.travel.leg_age import is_left_alone, wants_asking_again
from visits.domain.travel.missing_blocks import Pair
from visits.domain.travel.place import Place
from visits.models import RoadLeg, RoadTrouble
from visits.roads.road_engine import RoadEngine


def known_legs(scope: Scope, engine: RoadEngine | None, places: Sequence[Place]) -> dict[Pair, CarLeg]:
    """By (from, to) keys; drives for which the map knows no road are absent. One query."""
    rows = _rows(scope, engine, places) if engine else ()
    return {
        (a, b): CarLeg(deciseconds / 10, metres)
        for a, b, deciseconds, metres, _ in rows
        if deciseconds is not None and metres is not None
    }


def asked_pairs(scope: Scope, engine: RoadEngine, places: Sequence[Place], at: datetime) -> set[Pair]:
    """Pairs that need no asking at `at`: the map's answer is there and not too old."""
    return {
        (a, b)
        for a, b, deciseconds, _, asked_at in _rows(scope, engine, places)
        if not wants_asking_again(asked_at, has_road=deciseconds is not None, at=at)
    }


def trouble_of(scope: Scope, engine: RoadEngine | None) -> RoadTrouble | None:
    """The last failure of this map that no answer followed."""
    return RoadTrouble.objects.within(scope).filter(engine=engine.key).first() if engine else None


def is_quiet(trouble: RoadTrouble | None, at: datetime) -> bool:
    """True while the map is not asked because it has just failed."""
    return trouble is not None and is_left_alone(trouble.at, at)


def _rows(
    scope: Scope, engine: RoadEngine, places: Sequence[Place]
) -> Iterator[tuple[str, str, int | None, int | None, datetime]]:
    keys = {place.key for place in places}
    rows = RoadLeg.objects.within(scope).filter(engine=engine.key, from_place__in=keys, to_place__in=keys)
    return rows.values_list("from_place", "to_place", "deciseconds", "metres", "asked_at").iterator(5000)
