"""Which day's daily errand is due, in the zone of a business."""

from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from trimops.kernel.clock import at_local, local_day


def due_day(now: datetime, clock: time, zone: ZoneInfo) -> date:
    """The newest day whose `clock` time (of the wall in `zone`) has come by the aware instant `now`.

    One day is one errand, whatever the clocks do: an hour that is skipped is due once the clock has jumped over it, and
    one that happens twice at its first pass. A day that a zone left out of its calendar is never due.
    """
    day = local_day(now, zone)
    # because: in one zone Python compares what the walls show, which is not what came first in an hour that repeats
    while at_local(day, clock, zone).astimezone(UTC) > now.astimezone(UTC):
        day -= timedelta(days=1)
    return day
