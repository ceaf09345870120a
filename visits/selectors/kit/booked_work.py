"""The visits still to come, as a forecast of use takes them."""

from datetime import date
from zoneinfo import ZoneInfo

from django.db.models import Count, Q

from trimops.kernel.clock import from_to, local_day
from trimops.kernel.scope import Scope
from visits.domain.kit.forecast.visit_use import BookedVisit
from visits.domain.visit_states import VisitReason, VisitState
from visits.models import Visit

AHEAD = (VisitState.PLANNED, VisitState.CONFIRMED, VisitState.UNDER_WAY)


def booked_work(scope: Scope, first: date, last: date, zone: ZoneInfo) -> list[BookedVisit]:
    """From `first` to `last`; of a visit that is under way the cows still to come. One query."""
    rows = Visit.objects.within(scope).in_state(*AHEAD).starting_between(*from_to(first, last, zone))
    noted = Count("trims", filter=Q(trims__taken_back_at__isnull=True))
    columns = ("farm_id", "van_id", "planned_start", "head_count", "corrective_count", "reason")
    found = []
    for farm, van, start, booked, lame, reason, done in rows.annotate(noted=noted).values_list(
        *columns, "noted"
    ):
        heads = max(0, booked - done)
        day = local_day(start, zone)
        found.append(BookedVisit(farm, day, van, heads, min(lame, heads), VisitReason(reason)))
    return found
