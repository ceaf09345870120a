"""Numbers and instants of the documents to whole deciseconds and metres, and back.

A decisecond is a tenth of a second: 600 to the minute, 36 000 to the hour.
"""

from datetime import UTC, datetime, timedelta
from decimal import ROUND_HALF_UP, Decimal
from functools import lru_cache
from zoneinfo import ZoneInfo

PER_MINUTE = 600
PER_HOUR = 36_000
PER_DAY = 864_000
MOST = 10**12
"""Deciseconds (3 000 years, longer than any shift) or metres: whatever is more counts as this."""
EPOCH = datetime(1970, 1, 1, tzinfo=UTC)
TENTH = timedelta(milliseconds=100)


# because: travel tables say the same figures again and again, and the page reads a week for every move
@lru_cache(maxsize=100_000)
def whole(value: float, factor: int) -> tuple[int, bool]:
    """`value` x `factor` rounded half up to a whole number, MOST at most, and whether anything was rounded away."""
    exact = min(Decimal(repr(value)) * factor, Decimal(MOST))
    rounded = exact.quantize(Decimal(1), rounding=ROUND_HALF_UP)
    return int(rounded), rounded != exact


def deciseconds(minutes: float) -> int:
    """Minutes as whole deciseconds, half up."""
    return whole(minutes, PER_MINUTE)[0]


def metres(km: float) -> int:
    """Kilometres as whole metres, half up."""
    return whole(km, 1000)[0]


def tick(instant: datetime) -> int:
    """An aware instant (whole tenths of a second) as deciseconds since 1970."""
    return (instant - EPOCH) // TENTH


def nearest_tick(instant: datetime) -> int:
    """Any aware instant to the nearest decisecond, half up, so that equal stretches stay equal."""
    return tick(instant + TENTH / 2)


def instant(ticks: int, zone: ZoneInfo) -> datetime:
    """Deciseconds since 1970 as an aware instant in `zone`."""
    return (EPOCH + ticks * TENTH).astimezone(zone)


def written(ticks: int, zone: ZoneInfo) -> str:
    """ISO 8601 with offset; a fraction only where there is one."""
    return instant(ticks, zone).isoformat(timespec="milliseconds" if ticks % 10 else "seconds")


def minutes(ticks: int) -> int | float:
    """Deciseconds as minutes for a document: a whole number where it is one."""
    return ticks // PER_MINUTE if ticks % PER_MINUTE == 0 else ticks / PER_MINUTE


def kilometres(length: int) -> int | float:
    """Metres as kilometres for a document: a whole number where it is one."""
    return length // 1000 if length % 1000 == 0 else length / 1000
