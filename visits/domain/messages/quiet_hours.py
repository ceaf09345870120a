"""Hours of the night in which a farm is left in peace, by the wall clock of the business."""

from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from trimops.kernel.clock import at_local, local_day

IN_TIME = timedelta(hours=1)
"""What comes less than this before its hour is of little use to who must bring cows in. Common practice, no source."""
DAY = timedelta(days=1)


@dataclass(frozen=True)
class QuietHours:
    """From `begins` until `ends`, over midnight where it ends earlier; the same time twice means never quiet."""

    begins: time
    ends: time
    zone: ZoneInfo

    def over_at(self, at: datetime) -> datetime:
        """`at` itself where it is not quiet, else the instant at which that quiet ends, in the zone.

        By the wall: of an hour that the clocks repeat its first pass begins or ends it; one that they skip does so
        after the jump.
        """
        today = local_day(at, self.zone)
        for day in (today - DAY, today):
            begins, ends = self._night(day)
            if begins <= at.astimezone(UTC) < ends:
                return ends.astimezone(self.zone)
        return at

    def _night(self, day: date) -> tuple[datetime, datetime]:
        """The quiet that begins on `day`, in UTC: instants of one zone would be compared by their walls."""
        last = day if self.begins <= self.ends else day + DAY
        begins, ends = at_local(day, self.begins, self.zone), at_local(last, self.ends, self.zone)
        return begins.astimezone(UTC), ends.astimezone(UTC)


def goes_at(at: datetime, about: datetime, quiet: QuietHours) -> datetime:
    """When a message written at `at` about the hour `about` goes: after the quiet if it then still comes an hour
    before, else at once. A called-off visit of half past six wakes the farm, for its cows would wait in the yard.
    """
    over = quiet.over_at(at)
    return over if over + IN_TIME <= about else at
