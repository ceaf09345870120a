"""The visits of the history as rows, each with the days of its life and the cows asked for."""

from collections.abc import Iterator
from datetime import datetime, timedelta
from uuid import uuid4

from farms.models import Cow, Farm
from trimops.accounts.models import User
from trimops.portal.demo.build_people import Crew
from trimops.portal.demo.past import PastVisit
from visits.domain.routine_due import ASKED_BY_RULE
from visits.domain.visit_states import VisitReason, VisitState
from visits.models import AskedCow, Visit, VisitEvent, WashDown

BATCH = 900
ASKED_BY = {
    VisitReason.ROUTINE: ASKED_BY_RULE,
    VisitReason.RECHECK: "re-check rule",
    VisitReason.URGENT: "the farm, by telephone",
}
CALLED_OFF = "the farm rang: no hands to fetch the cows"


def build_visits(crew: Crew, farms: list[Farm], herds: list[list[Cow]], past: list[PastVisit]) -> list[Visit]:
    """Rows in the order of `past`."""
    rows = Visit.objects.bulk_create([_visit(crew, farms[p.farm], p) for p in past], batch_size=BATCH)
    pairs = list(zip(rows, past, strict=True))
    AskedCow.objects.bulk_create(
        [row for visit, p in pairs for row in _asked(visit, herds[p.farm], p)], batch_size=BATCH
    )
    VisitEvent.objects.bulk_create(
        [row for visit, p in pairs for row in _events(visit, crew.driver(p.van))], batch_size=BATCH
    )
    return rows


def build_wash_downs(crew: Crew, past: list[PastVisit], visits: list[Visit]) -> None:
    """One for each visit that was made, noted when its last cow was out."""
    made = [pair for pair in zip(past, visits, strict=True) if pair[1].state == VisitState.FINISHED]
    rows = [_wash_down(visit, crew.driver(p.van)) for p, visit in made]
    WashDown.objects.bulk_create(rows, batch_size=BATCH)


def _wash_down(visit: Visit, by: User) -> WashDown:
    return WashDown(
        business_id=visit.business_id,
        visit=visit,
        record=uuid4(),
        substance="Peroxygen",
        dilution="2 % w/v",
        contact_minutes=10,
        litres=10,
        washed_at=visit.changed_at,
        by=by,
    )


def _visit(crew: Crew, farm: Farm, past: PastVisit) -> Visit:
    visit = Visit(
        business=crew.business,
        farm=farm,
        reason=past.reason.value,
        asked_by=ASKED_BY[past.reason],
        asked_at=_asked_at(past),
        due_from=past.due_from,
        due_until=past.due_until,
        head_count=past.head_count,
        corrective_count=past.corrective_count,
        expected_minutes=past.expected_minutes,
        van=crew.vans[past.van],
        planned_start=past.planned,
        planned_finish=past.planned + timedelta(minutes=past.expected_minutes),
    )
    if past.is_called_off:
        return _called_off(visit, past.planned)
    return _finished(visit, past) if past.is_done else _confirmed(visit, past)


def _asked_at(past: PastVisit) -> datetime:
    days = 1 if past.reason is VisitReason.URGENT else 6
    return past.planned.replace(hour=6, minute=30) - timedelta(days=days)


def _called_off(visit: Visit, start: datetime) -> Visit:
    visit.state, visit.called_off_because = VisitState.CALLED_OFF.value, CALLED_OFF
    visit.called_off_at = visit.changed_at = start - timedelta(hours=2)
    visit.calendar_sequence = 3
    return visit


def _confirmed(visit: Visit, past: PastVisit) -> Visit:
    visit.state, visit.changed_at = VisitState.CONFIRMED.value, _asked_at(past) + timedelta(hours=5)
    visit.calendar_sequence = 2
    return visit


def _finished(visit: Visit, past: PastVisit) -> Visit:
    finish = past.start + timedelta(minutes=past.minutes)
    visit.state, visit.calendar_sequence = VisitState.FINISHED.value, 4
    visit.started_at, visit.finished_at, visit.changed_at = past.start, finish, finish
    visit.start_checked = visit.washed_down = True
    visit.hygiene_note = "boots, crush and knives washed and disinfected"
    visit.signed_by = "the herd manager"
    return visit


def _asked(visit: Visit, herd: list[Cow], past: PastVisit) -> Iterator[AskedCow]:
    for cow, why in past.asked:
        yield AskedCow(business_id=visit.business_id, visit=visit, cow=herd[cow], why=why[:200])


def _events(visit: Visit, by: User) -> Iterator[VisitEvent]:
    yield _event(visit, "", VisitState.WANTED, visit.asked_at, by)
    yield _event(visit, "wanted", VisitState.PLANNED, visit.asked_at + timedelta(hours=2), by)
    yield _event(visit, "planned", VisitState.CONFIRMED, visit.asked_at + timedelta(hours=5), by)
    if visit.state == VisitState.CALLED_OFF:
        yield _event(visit, "confirmed", VisitState.CALLED_OFF, visit.changed_at, by, CALLED_OFF)
    if visit.state == VisitState.FINISHED:
        yield _event(visit, "confirmed", VisitState.UNDER_WAY, visit.started_at or visit.asked_at, by)
        yield _event(visit, "under_way", VisitState.FINISHED, visit.changed_at, by)


def _event(
    visit: Visit, before: str, after: VisitState, at: datetime, by: User, note: str = ""
) -> VisitEvent:
    return VisitEvent(
        business_id=visit.business_id, visit=visit, before=before, after=after.value, at=at, by=by, note=note
    )
