"""The visits that lie behind a business: how many cows came of those booked, and how long before they were booked."""

from dataclasses import dataclass
from datetime import date, datetime, timedelta
from zoneinfo import ZoneInfo

from django.db.models import Count, F, OuterRef, Q, Subquery

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
    """The newest `MOST_VISITS`, oldest first. One query.

    A farm that was erased took its cows along, so its bare visits say nothing of how many come of those booked.
    """
    over = Q(state=VisitState.FINISHED.value) | Q(
        state=VisitState.CALLED_OFF.value, called_off_at__gte=F("planned_start") - LATE_OFF
    )
    rows = Visit.objects.within(scope).filter(over, planned_start__isnull=False, farm__erased_at__isnull=True)
    told = rows.annotate(trimmed=_counted(scope), first_planned=_first_planned(scope))
    newest = told.order_by("-planned_start", "-pk")[:MOST_VISITS]
    found = [_done(visit, zone) for visit in newest]
    return sorted(found, key=lambda visit: (visit.day, visit.pk))


def _counted(scope: Scope) -> Subquery:
    """How many cows were done on the visit."""
    rows = Trim.objects.within(scope).filter(visit_id=OuterRef("pk")).order_by().values("visit_id")
    return Subquery(rows.annotate(number=Count("pk")).values("number"))


def _first_planned(scope: Scope) -> Subquery:
    """When the visit was first put into the diary."""
    rows = VisitEvent.objects.within(scope).filter(visit_id=OuterRef("pk"), after=VisitState.PLANNED.value)
    return Subquery(rows.order_by("at").values("at")[:1])


def _done(visit: Visit, zone: ZoneInfo) -> DoneVisit:
    # because: the type of a row does not know what it was annotated with
    cows: int = visit.trimmed or 0  # type: ignore[attr-defined]
    booked_at: datetime | None = visit.first_planned  # type: ignore[attr-defined]
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
