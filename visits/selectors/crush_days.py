"""The visits that a phone may want to take along: today's and tomorrow's of the person who holds it."""

from datetime import datetime, time, timedelta
from zoneinfo import ZoneInfo

from django.db.models import Q

from trimops.accounts.models import User
from trimops.kernel.clock import at_local, local_day
from trimops.kernel.scope import Scope
from visits.domain.visit_states import VisitState
from visits.models import Van, Visit
from visits.models.visit import VisitQuerySet
from visits.selectors.before_visit import visit_day
from visits.selectors.crush_visit import wire_time

TO_COME = (VisitState.PLANNED.value, VisitState.CONFIRMED.value)


def crush_days(scope: Scope, *, by: User, now: datetime, zone: ZoneInfo) -> list[dict[str, object]]:
    """Visits planned or confirmed for today and tomorrow, and any still under way, by their hour.

    Of the vans that the person drives; who drives none (an owner, say) sees those of the whole business. Each is
    {"id", "farm" (its name), "day", "state", "planned_start", "planned_finish", "head_count"}.
    """
    midnight = at_local(local_day(now, zone), time(0), zone)
    after = at_local(local_day(now, zone) + timedelta(days=2), time(0), zone)
    to_come = Q(state__in=TO_COME, planned_start__gte=midnight, planned_start__lt=after)
    rows = _of_the_driver(scope, by).filter(to_come | Q(state=VisitState.UNDER_WAY.value))
    rows = rows.select_related("farm", "business").order_by("planned_start", "id")
    return [_line(visit) for visit in rows]


def _of_the_driver(scope: Scope, by: User) -> VisitQuerySet:
    rows = Visit.objects.within(scope)
    drives = list(Van.objects.within(scope).filter(trimmer=by).values_list("pk", flat=True))
    return rows.filter(van_id__in=drives) if drives else rows


def _line(visit: Visit) -> dict[str, object]:
    return {
        "id": visit.pk,
        "farm": visit.farm.name,
        "day": visit_day(visit).isoformat(),
        "state": visit.state,
        "planned_start": wire_time(visit.planned_start),
        "planned_finish": wire_time(visit.planned_finish),
        "head_count": visit.head_count,
    }
