"""The milking that a visit must be clear of."""

from datetime import UTC, datetime
from zoneinfo import ZoneInfo

from farms.models import Milking
from trimops.kernel.clock import at_local, local_day
from trimops.kernel.scope import Scope
from visits.models import Visit


def done_by(scope: Scope, visit: Visit, zone: ZoneInfo) -> datetime | None:
    """When the next milking of that day begins after the visit did or will; None without one. UTC."""
    start = visit.started_at or visit.planned_start
    if start is None:
        return None
    day = local_day(start, zone)
    rows = Milking.objects.within(scope).filter(farm_id=visit.farm_id, weekday=day.weekday())
    begins = (at_local(day, clock, zone).astimezone(UTC) for clock in rows.values_list("starts", flat=True))
    return min((instant for instant in begins if instant > start), default=None)
