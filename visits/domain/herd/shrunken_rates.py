"""Rates of the herds of one business, each pulled to their common mean as far as its own cows leave it in doubt.

Method: hierarchical beta-binomial. The true shares of the herds are a beta curve with mean `mean` and spread
`spread` (its standard deviation as a part of the largest possible one, 0 to 1). Neither is plugged in: both are
integrated on a grid, even in the mean and even in the spread. Given both, a herd's share is a beta curve; the
mixture over the grid gives its mean and its interval with equal tails. Unit: shares 0 to 1 of cows seen.
The difference to the mean of the other herds has no such curve: it is drawn, with a seed made of the counts.

Source: Gelman et al., Bayesian Data Analysis, ch. 5 (from memory); the priors are our choice. The grid is laid
twice, the second time over the part that holds the weight. Coverage of the 95 % intervals is measured by
tests/bench/visits/bench_herd_shrinkage.py: for herds as they are found it lies between 93 and 97 %.

When the figure must not be shown: with counts of selective rounds among those of whole herds; to a farm, with so few
herds that a neighbour's figure could be worked out (`against_others` keeps that). The range of a usual herd is that
of the curve, never the lowest and highest herd: nobody's own figure is given away.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray
from scipy import special

from visits.domain.herd.beta_mixture import BetaMixture
from visits.domain.herd.intervals import LEVEL, Interval

Floats = NDArray[np.float64]
LEAST_HERDS = 2
ROUGH, FINE = (40, 30), (60, 40)
NEGLIGIBLE = 1e-5
DRAWS = 10_000


@dataclass(frozen=True)
class HerdCount:
    """`cows` with it of `seen` in one whole-herd round of one herd."""

    cows: int
    seen: int


@dataclass(frozen=True)
class ShrunkenRate:
    """One herd: `raw` as counted (None when nothing was seen), `share` pulled to the common mean, with its interval."""

    cows: int
    seen: int
    raw: float | None
    share: float
    interval: Interval


@dataclass(frozen=True)
class BesideOthers:
    """The mean share of the other herds, and one herd's share less that mean."""

    mean: float
    difference: Interval


@dataclass(frozen=True)
class HerdsTogether:
    """What the counts of all herds say of the common mean and the spread, as weights on a grid."""

    counts: tuple[HerdCount, ...]
    mean: Floats
    precision: Floats
    weights: Floats

    @cached_property
    def common_mean(self) -> float:
        return float(np.sum(self.weights * self.mean))

    def share_of(self, herd: int) -> BetaMixture:
        """What is known of the true share of the herd at that place of `counts`."""
        return self._curves(self.counts[herd])

    def beside_others(self, herd: int, level: float = LEVEL) -> "BesideOthers":
        """That herd's true share held against the mean of the true shares of the other herds that were seen."""
        chance = np.random.default_rng([herd, *(number for c in self.counts for number in (c.cows, c.seen))])
        cell = chance.choice(len(self.weights), size=DRAWS, p=self.weights)
        a, b = (self.mean * self.precision)[cell], ((1 - self.mean) * self.precision)[cell]
        own, *others = (
            chance.beta(a + count.cows, b + count.seen - count.cows)
            for count in (self.counts[herd], *self._others_of(herd))
        )
        mean = np.mean(others, axis=0)
        low, high = np.quantile(own - mean, [(1 - level) / 2, (1 + level) / 2])
        return BesideOthers(float(mean.mean()), Interval(float(low), float(high), level))

    def usual_herd(self) -> BetaMixture:
        """What is known of one more herd of this business of which nothing was counted."""
        return self._curves(HerdCount(0, 0))

    def _others_of(self, herd: int) -> Iterator[HerdCount]:
        return (count for place, count in enumerate(self.counts) if place != herd and count.seen)

    def _curves(self, count: HerdCount) -> BetaMixture:
        a, b = self.mean * self.precision, (1 - self.mean) * self.precision
        return BetaMixture(a + count.cows, b + count.seen - count.cows, self.weights)


def shrunken_rates(counts: Sequence[HerdCount], level: float = LEVEL) -> tuple[ShrunkenRate, ...] | None:
    """The herds in the order given; None with fewer than `LEAST_HERDS` in which cows were seen."""
    together = herds_together(counts)
    if together is None:
        return None
    return tuple(shrunken_rate(together, herd, level) for herd in range(len(counts)))


def shrunken_rate(together: HerdsTogether, herd: int, level: float = LEVEL) -> ShrunkenRate:
    """The herd at that place."""
    count, known = together.counts[herd], together.share_of(herd)
    raw = count.cows / count.seen if count.seen else None
    return ShrunkenRate(count.cows, count.seen, raw, known.mean, known.interval(level))


def herds_together(counts: Sequence[HerdCount]) -> HerdsTogether | None:
    """The common mean and spread of the herds; None with fewer than `LEAST_HERDS` in which cows were seen."""
    for count in counts:
        if not 0 <= count.cows <= count.seen:
            raise ValueError(f"{count.cows} of {count.seen} cows cannot be")
    if sum(count.seen > 0 for count in counts) < LEAST_HERDS:
        return None
    cows = np.array([float(count.cows) for count in counts])
    seen = np.array([float(count.seen) for count in counts])
    angles, spreads = _box(cows, seen, *_middles((0.0, np.pi / 2), (0.0, 1.0), ROUGH))
    angle, spread = _middles(angles, spreads, FINE)
    mean, precision, weights = _weighed(cows, seen, angle, spread)
    kept = weights > NEGLIGIBLE * weights.max()
    return HerdsTogether(tuple(counts), mean[kept], precision[kept], weights[kept] / weights[kept].sum())


def _middles(
    angles: tuple[float, float], spreads: tuple[float, float], cells: tuple[int, int]
) -> tuple[Floats, Floats]:
    """The middles of the cells of a grid over both ranges."""
    sides = [
        low + (high - low) * (np.arange(count) + 0.5) / count
        for (low, high), count in zip((angles, spreads), cells, strict=True)
    ]
    angle, spread = np.meshgrid(*sides, indexing="ij")
    return angle, spread


def _weighed(cows: Floats, seen: Floats, angle: Floats, spread: Floats) -> tuple[Floats, Floats, Floats]:
    """Mean and precision (a + b of the beta curve) at each cell, and its weight; all of them flat.

    Cells are even in the angle, so that small means have many; the sine gives each cell its width in the mean.
    """
    mean = np.sin(angle.ravel()) ** 2
    precision = 1 / spread.ravel() ** 2 - 1
    a, b = (mean * precision)[:, None], ((1 - mean) * precision)[:, None]
    chances = special.betaln(a + cows, b + seen - cows) - special.betaln(a, b)
    logs = chances.sum(axis=1)
    weights = np.exp(logs - logs.max()) * np.sin(2 * angle.ravel())
    return mean, precision, weights / weights.sum()


def _box(
    cows: Floats, seen: Floats, angle: Floats, spread: Floats
) -> tuple[tuple[float, float], tuple[float, float]]:
    """The ranges of both that hold the weight, a cell wider on each side."""
    weights = _weighed(cows, seen, angle, spread)[2].reshape(angle.shape)
    held = weights > NEGLIGIBLE * weights.max()
    return (
        _range(angle[held], float(angle[1, 0] - angle[0, 0]), np.pi / 2),
        _range(spread[held], float(spread[0, 1] - spread[0, 0]), 1.0),
    )


def _range(held: Floats, cell: float, most: float) -> tuple[float, float]:
    return max(0.0, float(held.min()) - 1.5 * cell), min(most, float(held.max()) + 1.5 * cell)
