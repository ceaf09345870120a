"""Which old backups may go: values in, values out."""

from collections.abc import Callable, Hashable, Iterable
from dataclasses import dataclass
from datetime import UTC, datetime


@dataclass(frozen=True)
class Keep:
    """Of how many days, ISO weeks and months the last backup stays. Days without a backup do not count."""

    days: int = 0
    weeks: int = 0
    months: int = 0

    def __post_init__(self) -> None:
        if min(self.days, self.weeks, self.months) < 0:
            raise ValueError("Of a number of days, weeks or months below nought nothing can be kept.")


def backups_to_drop(stamps: Iterable[datetime], keep: Keep) -> set[datetime]:
    """Of the aware `stamps` of good backups those that no day, week or month of `keep` holds.

    Kept is the last backup of each of the last `days` UTC days that have one, so of weeks and months. No clock
    is asked: where no backup was made for a year, nothing grows old. The newest is never dropped.
    """
    newest_first = sorted({stamp.astimezone(UTC) for stamp in stamps}, reverse=True)
    kept = set(newest_first[:1])
    kept |= _last_of_each(newest_first, keep.days, lambda stamp: stamp.date())
    kept |= _last_of_each(newest_first, keep.weeks, lambda stamp: stamp.isocalendar()[:2])
    kept |= _last_of_each(newest_first, keep.months, lambda stamp: (stamp.year, stamp.month))
    return set(newest_first) - kept


def _last_of_each(
    newest_first: list[datetime], count: int, span_of: Callable[[datetime], Hashable]
) -> set[datetime]:
    """The newest stamp of each of the last `count` spans that hold one."""
    last: dict[Hashable, datetime] = {}
    for stamp in newest_first:
        last.setdefault(span_of(stamp), stamp)
    return set(list(last.values())[:count])
