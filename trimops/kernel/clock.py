"""Days and clock times in a business's own zone.

Instants are aware datetimes, days are dates in the zone of the business, weeks are named by their Monday.
Only shells read the clock; everything below is handed the instant.
"""

from datetime import date, datetime, time, timedelta
from zoneinfo import ZoneInfo


def local_day(at: datetime, zone: ZoneInfo) -> date:
    """The calendar day on which the aware instant `at` falls in `zone`."""
    return at.astimezone(zone).date()


def monday_of(day: date) -> date:
    """The Monday of the week that holds `day`."""
    return day - timedelta(days=day.weekday())


def at_local(day: date, clock: time, zone: ZoneInfo) -> datetime:
    """The aware instant at which a wall clock in `zone` shows `clock` on `day`.

    An hour that happens twice (autumn) means its first pass; an hour that is skipped (spring) is read with
    the offset before the change, so it lands after the gap (PEP 495, fold=0).
    """
    return datetime.combine(day, clock.replace(tzinfo=None, fold=0), tzinfo=zone)


def from_to(first: date, last: date, zone: ZoneInfo) -> tuple[datetime, datetime]:
    """The instants at which `first` begins and `last` is over in `zone`."""
    return at_local(first, time(0), zone), at_local(last + timedelta(days=1), time(0), zone)
