"""A diary of many visits at many farms, written as rows at once."""

from datetime import datetime, timedelta

from farms.models import Farm
from tests.factories import House, make_farm
from visits.domain.visit_states import VisitReason, VisitState
from visits.models import Visit

FARMS = 40
STATES = [VisitState.PLANNED, VisitState.CONFIRMED, VisitState.FINISHED, VisitState.CALLED_OFF]
NOTES = (
    "Gate by the lower barn; ring before you come, the dog is loose. Crush under the roof, water at the wall."
)


def large_diary(house: House, count: int, now: datetime) -> None:
    """`count` visits in the window that a calendar shows around `now`, in every state with an hour."""
    farms = [
        make_farm(
            house.business, f"Farm number {number}", by=house.owner, access_notes=NOTES,
            address=f"{number} Made-up Lane\nNowhere\nXX{number} 0AB",
        )
        for number in range(FARMS)
    ]  # fmt: skip
    Visit.objects.bulk_create(
        _visit(house, farms[number % FARMS], number, count, now) for number in range(count)
    )


def _visit(house: House, farm: Farm, number: int, count: int, now: datetime) -> Visit:
    start = now + timedelta(minutes=round((number / count * 145 - 27) * 1440))
    finish = start + timedelta(minutes=90 + number % 60)
    return Visit(
        business=house.business,
        farm=farm,
        reason=list(VisitReason)[number % 3].value,
        state=STATES[number % 4].value,
        asked_at=now,
        due_from=start.date(),
        due_until=start.date(),
        head_count=5 + number % 40,
        expected_minutes=90 + number % 60,
        van=house.van,
        planned_start=start,
        planned_finish=finish,
        last_start=start,
        last_finish=finish,
        last_van=house.van,
        calendar_sequence=number % 7,
        changed_at=now - timedelta(minutes=number),
    )
