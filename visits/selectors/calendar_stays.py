"""When a van stays in, as calendars show it."""

from datetime import date
from typing import NamedTuple
from zoneinfo import ZoneInfo

from trimops.kernel.clock import from_to
from trimops.paper.days import day_short
from visits.documents.calendar_feed_content import CalendarVisit
from visits.models import OutBecause
from visits.selectors.calendar_rows import instant, newest


class DayOffRow(NamedTuple):
    """The columns of `calendar_rows.DAY_OFF`."""

    key: int
    van: str
    van_since: str | None
    noted_at: str | None
    day: str
    reason: str


class VanOutRow(NamedTuple):
    """The columns of `calendar_rows.VAN_OUT`."""

    key: int
    van: str
    van_since: str | None
    noted_at: str
    because: str
    since: str
    until: str
    sequence: int


def day_off_event(row: DayOffRow, uid: str, zone: ZoneInfo) -> CalendarVisit:
    """A whole day; it is put down and taken away, never changed."""
    day = date.fromisoformat(row.day)
    first, last = from_to(day, day, zone)
    return CalendarVisit(
        uid=uid,
        sequence=0,
        last_modified=newest(row.noted_at or first.isoformat(), row.van_since),
        start=first,
        end=last,
        summary=f"{row.van} stays in: {row.reason}" if row.reason else f"{row.van} stays in",
        all_day=True,
    )


def van_out_event(row: VanOutRow, uid: str, zone: ZoneInfo) -> CalendarVisit:
    """Some hours of one day as hours; what goes on over a night as whole days, the hours beside them."""
    start, end = instant(row.since).astimezone(zone), instant(row.until).astimezone(zone)
    goes_on = start.date() != end.date()
    hours = f"From {day_short(start)} {start:%H:%M} to {day_short(end)} {end:%H:%M}"
    return CalendarVisit(
        uid=uid,
        sequence=row.sequence,
        last_modified=newest(row.noted_at, row.van_since),
        start=start,
        end=end,
        summary=f"{row.van} does not go out: {OutBecause(row.because).label.lower()}",
        description=hours if goes_on else "",
        all_day=goes_on,
    )
