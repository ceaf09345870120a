"""An instant as ISO 8601 writes it, in any of its forms for a date, a time of day and an offset."""

import re
from datetime import datetime, timedelta

INSTANT = re.compile(
    r"(?P<day>[0-9W-]+)T(?P<clock>[0-9:]+)(?P<part>[.,][0-9]+)?(?P<offset>Z|[+-][0-9]{2}(:?[0-9]{2})?)"
)
END_OF_DAY = {"24": "00", "24:00": "00:00", "2400": "0000", "24:00:00": "00:00:00", "240000": "000000"}


def plain_instant(text: str) -> str:
    """The same instant in the plain form `2026-03-02T07:00:00+00:00`; 24:00 is the next day's 00:00.

    Raises ValueError, with the sentence to show, for what is no instant with an offset or lies outside the years
    1971 to 2199. A leap second is refused: no clock here can count it. Parts of a microsecond are dropped.
    """
    found = INSTANT.fullmatch(text)
    if not found:
        raise ValueError("is not an ISO 8601 instant with offset, such as 2026-03-02T07:00:00+00:00")
    clock, part = found["clock"], found["part"] or ""
    at_end = clock in END_OF_DAY and not part[1:].strip("0")
    time = END_OF_DAY[clock] if at_end else clock + part
    try:
        read = datetime.fromisoformat(f"{found['day']}T{time}{found['offset']}")
    except ValueError:
        raise ValueError("is not a date and time of the calendar") from None
    if not 1971 <= read.year <= 2199:
        raise ValueError("must lie in the years 1971 to 2199")
    return (read + timedelta(days=1 if at_end else 0)).isoformat()
