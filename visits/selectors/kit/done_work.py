"""The visits that lie behind a business: how many cows came of those booked, and how long before they were booked."""

from dataclasses import dataclass
from datetime import date, datetime, timedelta
from zoneinfo import ZoneInfo

from django.db.models import Count, F, Min, Q

from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope
from visits.domain.visit_states import VisitReason, VisitState
from visits.models import Trim, Visit, VisitEvent

MOST_VISITS = 1500
LATE_OFF = timedelta(days=7)
"""A visit called off longer before its hour was never counted on."""


@dataclass(frozen=True)
class DoneVisit:
    """A visit that was made, or called off at short notice. `notice`: days from being planned to its day."""

    pk: int
    farm: int
    day: date
    reason: VisitReason
    cows: int
    booked: tuple[int, int]
    notice: int
    is_made: bool


def done_work(scope: Scope, zone: ZoneInfo) -> list[DoneVisit]:
    """The newest `MOST_VISITS`, oldest first. Three queries.

    A farm that was erased took its cows along, so its bare visits say nothing of how many come of those booked.
    """
    over = Q(state=VisitState.FINISHED.value) | Q(
        state=VisitState.CALLED_OFF.value, called_off_at__gte=F("planned_start") - LATE_OFF
    )
    rows = Visit.objects.within(scope).filter(over, planned_start__isnull=False, farm__erased_at__isnull=True)
    newest = rows.order_by("-planned_start", "-pk")[:MOST_VISITS]
    trims = Trim.objects.within(scope).filter(visit__state=VisitState.FINISHED.value).order_by()
    cows = dict(trims.values_list("visit_id").annotate(Count("pk")))
    planned = _first_planned(scope)
    found = [_done(visit, cows.get(visit.pk, 0), planned.get(visit.pk), zone) for visit in newest]
    return sorted(found, key=lambda visit: (visit.day, visit.pk))


def _first_planned(scope: Scope) -> dict[int, datetime]:
    """By visit, when it was first put into the diary."""
    events = VisitEvent.objects.within(scope).filter(after=VisitState.PLANNED.value).order_by()
    return dict(events.values_list("visit_id").annotate(Min("at")))


def _done(visit: Visit, cows: int, booked_at: datetime | None, zone: ZoneInfo) -> DoneVisit:
    is_made = visit.state == VisitState.FINISHED.value
    begun = (visit.started_at if is_made else None) or visit.planned_start
    if begun is None:
        raise ValueError(f"visit {visit.pk} has no hour")
    day = local_day(begun, zone)
    booked_on = local_day(booked_at or visit.asked_at, zone)
    return DoneVisit(
        pk=visit.pk,
        farm=visit.farm_id,
        day=day,
        reason=VisitReason(visit.reason),
        cows=cows if is_made else 0,
        booked=(visit.head_count, min(visit.corrective_count, visit.head_count)),
        notice=max(0, (day - booked_on).days),
        is_made=is_made,
    )
