"""Months of finished visits put straight into the tables: a history to learn from, quickly made."""

from datetime import UTC, datetime, timedelta

from farms.models import Cow
from visits.domain.actions import TrimKind
from visits.domain.visit_states import VisitReason, VisitState
from visits.models import Trim, Visit

FIRST = datetime(2026, 1, 5, 8, tzinfo=UTC)
COWS = (4, 8, 12, 16)


def make_past(house, farm, count=24, minutes=60.0, pace=10.0, first=FIRST, van=None):
    """`count` visits to the farm, one a day, `minutes` and `pace` for each cow long; the visits, oldest first."""
    rows = [
        _visit(house, farm, first + timedelta(days=n), n, minutes, pace, van or house.van)
        for n in range(count)
    ]
    visits = Visit.objects.bulk_create(rows)
    herd = Cow.objects.bulk_create(
        [Cow(business=house.business, farm=farm, number=f"{farm.pk}-{n}") for n in range(max(COWS))]
    )
    Trim.objects.bulk_create(
        [_trim(house, visit, cow) for visit in visits for cow in herd[: visit.head_count]], batch_size=500
    )
    return visits


def _visit(house, farm, start, number, minutes, pace, van):
    cows = COWS[number % len(COWS)]
    wobble = (-6, 5, 0, 8, -7)[number % 5]
    finish = start + timedelta(minutes=minutes + pace * cows + wobble)
    return Visit(
        business=house.business,
        farm=farm,
        reason=VisitReason.ROUTINE.value,
        state=VisitState.FINISHED.value,
        asked_by="The herd manager",
        asked_at=start - timedelta(days=4),
        due_from=start.date(),
        due_until=start.date(),
        head_count=cows,
        expected_minutes=120,
        van=van,
        planned_start=start,
        planned_finish=start + timedelta(minutes=120),
        started_at=start + timedelta(minutes=5),
        finished_at=finish + timedelta(minutes=5),
        changed_at=finish + timedelta(minutes=5),
    )


def _trim(house, visit, cow):
    return Trim(
        business=house.business,
        visit=visit,
        cow=cow,
        kind=TrimKind.FUNCTIONAL.value,
        recorded_at=visit.started_at + timedelta(minutes=10),
        recorded_by=house.trimmer,
    )
