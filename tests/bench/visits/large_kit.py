"""A business with many visits behind it and many consumables, put straight into the tables."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from decimal import Decimal
from random import Random

from farms.models import Cow
from tests.factories import House, make_consumable, make_house, stock_up
from visits.domain.actions import TrimKind
from visits.domain.kit.stock_kinds import ConsumableKind, MovementKind, UseOf
from visits.domain.visit_states import VisitReason, VisitState
from visits.models import Consumable, StockMovement, StockPlace, Trim, Visit, VisitEvent
from visits.services.kit.stock_place import place_of_van

BATCH = 900
CHANCES = (1, 1, 1, 0.12, 0.05, 0.05, 0.03, 0.02, 0.01, 0.01, 0.005, 0.5)
"""Of each consumable, that a cow uses some: three are used by every cow, as gloves are."""
VISITS_A_WEEK, BOOKED_WEEKS = 20, 4


@dataclass(frozen=True)
class LargeKit:
    """How many visits lie behind it, how many cows each had, up to which day."""

    visits: int = 1500
    cows: int = 13
    today: date = date(2026, 11, 30)


def large_kit(wanted: LargeKit) -> House:
    """The house with that past, and four weeks booked."""
    house, chance = make_house(), Random(1)
    items = [
        make_consumable(house.business, f"Item {number}", ConsumableKind.OTHER)
        for number in range(len(CHANCES))
    ]
    cows = [
        Cow(business=house.business, farm=house.farm, number=f"9{number}") for number in range(wanted.cows)
    ]
    Cow.objects.bulk_create(cows)
    visits = Visit.objects.bulk_create(_visits(house, wanted), batch_size=BATCH)
    VisitEvent.objects.bulk_create((_planned(visit) for visit in visits), batch_size=BATCH)
    done = [visit for visit in visits if visit.finished_at]
    trims = Trim.objects.bulk_create(_trims(house, done, cows), batch_size=BATCH)
    place = place_of_van(house.van)
    lines = (line for trim in trims for line in _lines(place, trim, items, chance))
    StockMovement.objects.bulk_create(lines, batch_size=BATCH)
    for item in items:
        stock_up(item, 40_000, at=done[0].planned_start)
    return house


def _visits(house: House, wanted: LargeKit) -> Iterator[Visit]:
    days = 7 * wanted.visits // VISITS_A_WEEK
    for number in range(wanted.visits + VISITS_A_WEEK * BOOKED_WEEKS):
        day = wanted.today + timedelta(days=7 * number // VISITS_A_WEEK - days)
        at = datetime.combine(day, time(8), UTC) + timedelta(hours=number % 3)
        is_done = number < wanted.visits
        yield Visit(
            business=house.business,
            farm=house.farm,
            van=house.van,
            reason=VisitReason.ROUTINE.value,
            state=VisitState.FINISHED.value if is_done else VisitState.CONFIRMED.value,
            asked_at=at - timedelta(days=6),
            changed_at=at,
            due_from=day,
            due_until=day,
            head_count=wanted.cows,
            corrective_count=number % 4,
            expected_minutes=60,
            planned_start=at,
            planned_finish=at + timedelta(hours=1),
            started_at=at if is_done else None,
            finished_at=at + timedelta(hours=1) if is_done else None,
        )


def _planned(visit: Visit) -> VisitEvent:
    words = {"before": VisitState.WANTED.value, "after": VisitState.PLANNED.value, "at": visit.asked_at}
    return VisitEvent(business_id=visit.business_id, visit=visit, **words)


def _trims(house: House, visits: list[Visit], cows: list[Cow]) -> Iterator[Trim]:
    for visit in visits:
        for cow in cows:
            yield Trim(
                business=house.business,
                visit=visit,
                cow=cow,
                kind=TrimKind.FUNCTIONAL.value,
                recorded_at=visit.started_at,
                recorded_by=house.trimmer,
            )


def _lines(place: StockPlace, trim: Trim, items: list[Consumable], chance: Random) -> Iterator[StockMovement]:
    for item, share in zip(items, CHANCES, strict=True):
        if share == 1 or chance.random() < share:
            yield StockMovement(
                business_id=trim.business_id,
                consumable=item,
                place=place,
                kind=MovementKind.USED.value,
                use_of=UseOf.COW.value,
                quantity=Decimal(-chance.choice((1, 1, 1, 2))),
                at=trim.recorded_at,
                noted_at=trim.recorded_at,
                trim=trim,
            )
