"""Hours that are held for a farm: nobody else may have them until they are taken, let go or run out."""

from collections.abc import Collection, Iterable, Iterator
from datetime import date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from trimops.kernel.clock import at_local, local_day
from trimops.kernel.scope import Scope
from visits.models import HeldHour


def held_in_week(scope: Scope, monday: date, zone: ZoneInfo, now: datetime) -> list[HeldHour]:
    """Those in force at `now` with their hour in that week. One query."""
    first, last = (at_local(monday + timedelta(days=days), time(0), zone) for days in (0, 7))
    rows = HeldHour.objects.within(scope).in_force(now).filter(start__gte=first, start__lt=last)
    return list(rows.select_related("farm", "van", "moved_visit"))


def shift_of_hold(held: HeldHour, zone: ZoneInfo) -> str:
    """The id of its shift in the week problem."""
    return f"van-{held.van_id}-{local_day(held.start, zone)}"


def held_jobs(
    kept: Iterable[HeldHour], zone: ZoneInfo, shifts: Collection[str]
) -> Iterator[dict[str, object]]:
    """The hours as promised jobs of a week problem; not those whose van does not go out that day after all."""
    for held in kept:
        shift = shift_of_hold(held, zone)
        start, end = held.start.astimezone(zone).isoformat(), held.finish.astimezone(zone).isoformat()
        if shift in shifts:
            yield {
                "id": held.job,
                "site": f"farm-{held.farm_id}",
                "minutes": held.minutes,
                "cows": held.head_count,
                "windows": [{"start": start, "end": end}],
                "fixed": {"shift": shift, "start": start},
            }
