"""When a visit should be over, and how long after that nobody is asked yet."""

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

WRAP_UP = timedelta(minutes=20)
"""From the last cow to driving off: the crush washed, papers signed. Common practice, no source."""


@dataclass(frozen=True)
class WorkSoFar:
    """Of a visit: when it began (or should have), for how long it was planned, cows expected and cows done.

    Times are aware. `last_cow_at`: when the newest cow was noted, None before the first.
    """

    began_at: datetime
    expected: timedelta
    head_count: int
    cows_done: int = 0
    last_cow_at: datetime | None = None


def expected_end(work: WorkSoFar) -> datetime:
    """The planned length from the real start; later where the cows done so far say so, never earlier.

    Never earlier because head counts are guesses, and a man who is ahead of them must not be asked for it.
    """
    # because: in a zone of its own a time is added to by the wall, and an hour that comes twice would be lost
    planned = work.began_at.astimezone(UTC) + work.expected
    if work.last_cow_at is None:
        return planned
    each = work.expected / max(1, work.head_count)
    left = max(0, work.head_count - work.cows_done)
    return max(planned, work.last_cow_at.astimezone(UTC) + left * each + WRAP_UP)


def grace_of(
    grace: timedelta, *, is_quiet_place: bool, began_at: datetime, heard_at: datetime | None
) -> timedelta:
    """The grace before he is asked: twice that at a farm known to have no network, unless the phone was heard there.

    He cannot be asked where nothing reaches him, and mostly he only has to drive to the next hill to be heard.
    """
    is_heard_there = heard_at is not None and heard_at > began_at
    return 2 * grace if is_quiet_place and not is_heard_there else grace
