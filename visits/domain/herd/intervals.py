"""Intervals of shares, counts, differences and ratios: the only ones the herd's figures use.

Every interval holds the true value in at least, or on average, `level` of all samples; the level is kept with it.

- `wilson`: a share of cows. Wilson 1927, J Am Stat Assoc 22:209 (score interval, no continuity correction).
- `poisson_exact`: a count of cases in a stretch of time. Garwood 1936, Biometrika 28:437 (equal tails, so it is
  wide enough for every true count). Divide by the cow-years for a rate.
- `newcombe`: the difference of two shares of different cows. Newcombe 1998, Stat Med 17:873, method 10.
- `log_ratio`: a ratio with its standard error on the log scale. Katz et al. 1978, Biometrics 34:469 (relative
  risk), Woolf 1955, Ann Hum Genet 19:251 (odds ratio).

Journal references from memory; the figures are held against statsmodels and against published arms in
tests/standards. They must not be shown for cows that were not counted each once: a cow seen twice is one cow.
"""

import math
from dataclasses import dataclass
from functools import lru_cache

from scipy import special

LEVEL = 0.95


@dataclass(frozen=True)
class Interval:
    """From `low` to `high`, in the unit of the figure it belongs to; `level` is how sure it is (0.95)."""

    low: float
    high: float
    level: float = LEVEL

    def holds(self, value: float) -> bool:
        """Whether the value is one that the interval does not rule out."""
        return self.low <= value <= self.high

    def times(self, factor: float) -> "Interval":
        """The interval in another unit: shares times 100 are per 100 cows. The factor is not negative."""
        return Interval(self.low * factor, self.high * factor, self.level)


@dataclass(frozen=True)
class Share:
    """`count` of `total`, each counted once; `interval` bounds the share (0 to 1), None when nothing was counted."""

    count: int
    total: int
    interval: Interval | None

    @property
    def share(self) -> float | None:
        return self.count / self.total if self.total else None

    @property
    def per_100(self) -> float | None:
        return 100 * self.count / self.total if self.total else None

    @property
    def per_100_interval(self) -> Interval | None:
        return self.interval.times(100) if self.interval else None


def share_of(count: int, total: int, level: float = LEVEL) -> Share:
    """The share with its Wilson interval; without one when nothing was counted."""
    _check_counts(count, total)
    return Share(count, total, wilson(count, total, level) if total else None)


def wilson(count: int, total: int, level: float = LEVEL) -> Interval:
    """Wilson's interval of a share, 0 to 1. ValueError when nothing was counted."""
    _check_counts(count, total)
    if total == 0:
        raise ValueError("no cows were seen")
    z = normal_quantile(level)
    share = count / total
    middle = share + z * z / (2 * total)
    spread = z * math.sqrt(share * (1 - share) / total + z * z / (4 * total * total))
    scale = 1 + z * z / total
    low = 0.0 if count == 0 else (middle - spread) / scale
    high = 1.0 if count == total else (middle + spread) / scale
    return Interval(low, high, level)


def poisson_exact(count: int, level: float = LEVEL) -> Interval:
    """Garwood's interval of the count that was to be expected. Divide it by what the cases were counted over."""
    if count < 0:
        raise ValueError(f"{count} cases cannot be")
    tail = _tail(level)
    low = float(special.gammaincinv(count, tail)) if count else 0.0
    return Interval(low, float(special.gammainccinv(count + 1, tail)), level)


def newcombe(count: int, total: int, other_count: int, other_total: int, level: float = LEVEL) -> Interval:
    """The first share less the other, -1 to 1, by the Wilson bounds of both."""
    first, other = wilson(count, total, level), wilson(other_count, other_total, level)
    share, other_share = count / total, other_count / other_total
    gap = share - other_share
    below = math.hypot(share - first.low, other.high - other_share)
    above = math.hypot(first.high - share, other_share - other.low)
    return Interval(gap - below, gap + above, level)


def log_ratio(ratio: float, standard_error: float, level: float = LEVEL) -> Interval:
    """A ratio over 0 with the standard error of its logarithm."""
    if ratio <= 0 or standard_error < 0:
        raise ValueError(f"no log interval for {ratio} with standard error {standard_error}")
    factor = math.exp(normal_quantile(level) * standard_error)
    return Interval(ratio / factor, ratio * factor, level)


@lru_cache(maxsize=64)
def normal_quantile(level: float = LEVEL) -> float:
    """How many standard deviations to each side hold `level` of a normal curve: 1.96 for 0.95."""
    return -float(special.ndtri(_tail(level)))


def _tail(level: float) -> float:
    if not 0 < level < 1:
        raise ValueError(f"a level lies between 0 and 1, not at {level}")
    return (1 - level) / 2


def _check_counts(count: int, total: int) -> None:
    if not 0 <= count <= total:
        raise ValueError(f"{count} of {total} cows cannot be")
