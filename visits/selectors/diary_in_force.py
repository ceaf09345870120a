"""The hours of a week's diary, and how firmly each farm counts on its own."""

from datetime import date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from trimops.kernel.clock import at_local, local_day
from trimops.kernel.scope import Scope
from visits.domain.planning.replan.begun_day import DayVisit
from visits.domain.planning.replan.plan_in_force import InForce, Promise
from visits.domain.visit_states import VisitState
from visits.models import Visit

LIVE = (VisitState.PLANNED, VisitState.CONFIRMED)
"""States in which a visit has its hour still before it."""


def diary_of(scope: Scope, monday: date, zone: ZoneInfo) -> list[Visit]:
    """Visits with a van and an hour in that week, called off ones left out, in order of time. One query."""
    first, last = (at_local(monday + timedelta(days=days), time(0), zone) for days in (0, 7))
    rows = Visit.objects.within(scope).filter(van__isnull=False).exclude(state=VisitState.CALLED_OFF)
    rows = rows.starting_between(first, last).select_related("farm", "van")
    return list(rows.order_by("planned_start", "id"))


def as_in_force(visit: Visit, zone: ZoneInfo) -> InForce:
    """The visit as an entry of the plan in force. It must have a van and an hour (ValueError)."""
    start = hour_of(visit).astimezone(zone)
    told = visit.hour_told.astimezone(zone) if visit.hour_told else None
    firm = visit.visit_state is VisitState.CONFIRMED
    promise = Promise.CONFIRMED if firm else Promise.TOLD if told else Promise.PLANNED
    shift = f"van-{visit.van_id}-{local_day(start, zone)}"
    return InForce(f"visit-{visit.pk}", shift, start, promise, None if firm else told, f"van-{visit.van_id}")


def as_day_visit(visit: Visit) -> DayVisit:
    """The visit as one of its van's day."""
    return DayVisit(
        f"visit-{visit.pk}",
        f"farm-{visit.farm_id}",
        hour_of(visit),
        visit.expected_minutes,
        visit.head_count,
        visit.farm.hygiene_level,
        visit.started_at,
        visit.finished_at,
    )


def hour_of(visit: Visit) -> datetime:
    """The hour it has in the diary, or else when it began."""
    at = visit.planned_start or visit.started_at
    if at is None:
        raise ValueError(f"visit {visit.pk} has no hour")
    return at
