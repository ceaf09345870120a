"""The hours a grinder disc has worked, against the hours after which it is to be replaced.

Reckoned from how long the cows stood in the crush while it was in hand. The disc turns for a part of that time only, so
this is the most it can have worked. Cows whose time was not noted are taken at the mean of the others.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from visits.domain.kit.edge_log import CowCut


@dataclass(frozen=True)
class BladeHours:
    """`hours` at most, of `cows` cows, of which `untimed` had no time; None where no cow was timed."""

    hours: float | None
    cows: int
    untimed: int
    limit: float | None = None

    @property
    def is_over(self) -> bool:
        """Whether it is to be replaced by its hours."""
        return self.limit is not None and self.hours is not None and self.hours >= self.limit

    @property
    def left(self) -> float | None:
        """Hours left; None where there is no limit, or nothing to reckon from."""
        return None if self.limit is None or self.hours is None else max(0.0, self.limit - self.hours)


def blade_hours(cows: Iterable[CowCut], since: datetime, limit: float | None = None) -> BladeHours:
    """The hours of a blade that was new at `since`. `cows`: those it was in hand at."""
    seconds = [cow.seconds for cow in cows if cow.at >= since]
    timed = [each for each in seconds if each]
    hours = sum(timed) / len(timed) * len(seconds) / 3600 if timed else (None if seconds else 0.0)
    return BladeHours(hours, len(seconds), len(seconds) - len(timed), limit)
