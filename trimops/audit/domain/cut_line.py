"""From when on the trail is kept."""

from datetime import UTC, datetime

LEAST_YEARS = 3
"""What is younger is never cut, whatever anybody says: common practice, no source."""


def cut_line(at: datetime, years: int) -> datetime:
    """The beginning (UTC) of the same month so many years before the aware instant `at`: what is older may go.

    By whole months, so that a trail bears twelve cuts a year at most. ValueError for less than `LEAST_YEARS`.
    """
    if years < LEAST_YEARS:
        raise ValueError(f"the trail is kept for {LEAST_YEARS} years at least")
    day = at.astimezone(UTC)
    return datetime(day.year - years, day.month, 1, tzinfo=UTC)
