"""The drives by road that a business misses are asked for and kept."""

from collections.abc import Iterator, Sequence
from datetime import datetime

from django.db import transaction

from trimops.accounts.models import Business
from trimops.kernel.scope import Scope
from visits.domain.travel.drive import CarLeg
from visits.domain.travel.missing_blocks import Block, missing_blocks
from visits.domain.travel.place import Place
from visits.models import RoadLeg, RoadTrouble
from visits.roads.ask_blocks import ask_blocks
from visits.roads.road_engine import CarTable, RoadEngine, RoadsUnavailable
from visits.selectors.road_legs import asked_pairs, is_quiet, trouble_of
from visits.selectors.roads_in_use import roads_in_use

SECONDS = 5.0
"""For all questions of one planning together."""


def learn_roads(*, business: Business, places: Sequence[Place], at: datetime) -> int:
    """Ask the road map for the missing drives between `places`; the number of answers kept.

    Nothing is asked where no map is set, none is missing, or the map failed in the last minutes. A failure is kept
    as the business's `RoadTrouble`, never raised. Not one transaction: no lock is held while the map is asked.
    """
    engine, scope = roads_in_use().engine, Scope(business.pk)
    if engine is None or is_quiet(trouble_of(scope, engine), at):
        return 0
    keys = list(dict.fromkeys(place.key for place in places))
    blocks = list(missing_blocks(keys, asked_pairs(scope, engine, places, at)))
    kept = 0
    try:
        for block, table in ask_blocks(engine, blocks, SECONDS):
            kept += _keep(business, engine, list(_legs(block, table)), at)
    except RoadsUnavailable as fault:
        _remember(business, engine, str(fault), at)
        return kept
    if blocks:
        RoadTrouble.objects.within(scope).filter(engine=engine.key).delete()
    return kept


def _legs(block: Block, table: CarTable) -> Iterator[tuple[str, str, CarLeg | None]]:
    for a, row in zip(block.sources, table, strict=True):
        for b, leg in zip(block.destinations, row, strict=True):
            if a != b:
                yield a, b, leg


@transaction.atomic
def _keep(
    business: Business, engine: RoadEngine, legs: list[tuple[str, str, CarLeg | None]], at: datetime
) -> int:
    rows = [
        RoadLeg(
            business=business,
            engine=engine.key,
            from_place=a,
            to_place=b,
            deciseconds=round(leg.seconds * 10) if leg else None,
            metres=round(leg.metres) if leg else None,
            asked_at=at,
        )
        for a, b, leg in legs
    ]
    RoadLeg.objects.bulk_create(
        rows,
        batch_size=500,
        update_conflicts=True,
        unique_fields=["business", "engine", "from_place", "to_place"],
        update_fields=["deciseconds", "metres", "asked_at"],
    )
    return len(rows)


def _remember(business: Business, engine: RoadEngine, why: str, at: datetime) -> None:
    RoadTrouble.objects.within(Scope(business.pk)).update_or_create(
        engine=engine.key,
        defaults={"at": at, "why": why[:200]},
        create_defaults={"business": business, "at": at, "why": why[:200]},
    )
