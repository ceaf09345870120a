"""When one can work at a farm on a day."""

from datetime import date, time
from zoneinfo import ZoneInfo

from farms.domain.working_windows import MilkingTime, Window, WorkingDay, working_windows
from farms.models import Farm, Milking
from trimops.kernel.scope import Scope


def milkings_by_farm(scope: Scope) -> dict[tuple[int, int], list[MilkingTime]]:
    """Milking times by (farm, weekday), one query for the whole business."""
    found: dict[tuple[int, int], list[MilkingTime]] = {}
    rows = Milking.objects.within(scope).values_list("farm_id", "weekday", "starts", "minutes")
    for farm, weekday, starts, minutes in rows:
        found.setdefault((farm, weekday), []).append(MilkingTime(starts, minutes))
    return found


def windows_of(
    farm: Farm, day: date, zone: ZoneInfo, milkings: list[MilkingTime], hours: tuple[time, time]
) -> list[Window]:
    """The working windows of a farm on one day."""
    return working_windows(
        day, milkings, zone, WorkingDay(hours[0], hours[1], farm.rest_after_milking_minutes)
    )
