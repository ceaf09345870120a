"""How much groups differ and how much single visits do, found from the history itself (empirical Bayes).

Method: expectation and maximisation on the mixed model (Dempster, Laird and Rubin 1977; with the common part integrated
out this is restricted maximum likelihood; from memory), each variance with a weak prior of so many invented
observations. The noise of a row is scale x size^growth, so that a long visit may miss by more; its errors follow a
t-curve (Lange, Little and Taylor 1989, from memory): each row gets the weight (f + 1) / (f + e^2), e its error in
standard deviations, f the degrees of freedom. A finish forgotten until evening, ten deviations away, weighs a
twentieth and is as good as not there.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from visits.domain.visit_lengths.mixed_rows import CommonPrior, MixedRow, Solved, solve_mixed

LEAST_SIZE = 10.0
GROWTHS = (1.0, 1.25, 1.5, 1.75, 2.0)


@dataclass(frozen=True)
class Guess:
    """A variance before anything was seen, worth so many observations; 0: worth nothing."""

    variance: float
    worth: float = 0.0


@dataclass(frozen=True)
class FitWay:
    """`growth` None: the one of GROWTHS that fits best. `freedom` inf: a normal curve, no row is doubted."""

    groups: tuple[Guess, ...]
    noise: Guess
    growth: float | None = None
    freedom: float = math.inf
    steps: int = 80
    close: float = 1e-3


@dataclass(frozen=True)
class Variances:
    """Of each of a group's own amounts; the noise of a row is `scale` x size ^ `growth`."""

    groups: tuple[float, ...]
    scale: float
    growth: float

    def noise(self, size: float) -> float:
        """The variance of the noise of a row of that size."""
        return float(self.scale * max(size, LEAST_SIZE) ** self.growth)


@dataclass(frozen=True)
class Fitted:
    """The posterior, the variances it stands on, and each row's weight (1: not doubted)."""

    solved: Solved
    variances: Variances
    weights: tuple[float, ...]


def fit_mixed(rows: Sequence[MixedRow], prior: CommonPrior, way: FitWay) -> Fitted:
    """Go to and fro between posterior and variances until they stand still. ValueError without rows."""
    if not rows:
        raise ValueError("no rows to learn from")
    growth = GROWTHS[len(GROWTHS) // 2] if way.growth is None else way.growth
    sizes = [max(LEAST_SIZE, sum(amount * prior.means[at] for at, amount in row.common)) for row in rows]
    first = Variances(tuple(guess.variance for guess in way.groups), way.noise.variance, growth)
    found = Fitted(_solve(rows, prior, first, sizes, [1.0] * len(rows)), first, (1.0,) * len(rows))
    for _ in range(way.steps):
        before = found.variances
        found, sizes = _step(rows, prior, way, found, sizes)
        if _stands_still(before, found.variances, way.close):
            break
    return found


def _solve(
    rows: Sequence[MixedRow],
    prior: CommonPrior,
    variances: Variances,
    sizes: Sequence[float],
    weights: Sequence[float],
) -> Solved:
    noise = [variances.noise(size) / weight for size, weight in zip(sizes, weights, strict=True)]
    return solve_mixed(rows, prior, variances.groups, noise)


def _step(
    rows: Sequence[MixedRow], prior: CommonPrior, way: FitWay, found: Fitted, sizes: Sequence[float]
) -> tuple[Fitted, list[float]]:
    solved, variances = found.solved, found.variances
    misses = [(row.value - solved.fitted(row)) ** 2 + solved.doubt(row) for row in rows]
    weights = [
        _weight(miss / variances.noise(size), way.freedom) for miss, size in zip(misses, sizes, strict=True)
    ]
    weighed = [weight * miss for weight, miss in zip(weights, misses, strict=True)]
    growth = _best_growth(weighed, sizes) if way.growth is None else way.growth
    groups = tuple(_group_variance(solved, k, guess) for k, guess in enumerate(way.groups))
    fresh = Variances(groups, _scale(weighed, sizes, growth, way.noise), growth)
    sizes = [max(LEAST_SIZE, solved.fitted(row)) for row in rows]
    return Fitted(_solve(rows, prior, fresh, sizes, weights), fresh, tuple(weights)), sizes


def _weight(miss: float, freedom: float) -> float:
    return 1.0 if math.isinf(freedom) else (freedom + 1) / (freedom + miss)


def _scale(weighed: Sequence[float], sizes: Sequence[float], growth: float, guess: Guess) -> float:
    seen = sum(miss / size**growth for miss, size in zip(weighed, sizes, strict=True))
    return float((seen + guess.worth * guess.variance) / (len(weighed) + guess.worth))


def _group_variance(solved: Solved, k: int, guess: Guess) -> float:
    seen = sum(group.mean[k] ** 2 + group.covariance[k][k] for group in solved.groups)
    return (seen + guess.worth * guess.variance) / (len(solved.groups) + guess.worth)


def _best_growth(weighed: Sequence[float], sizes: Sequence[float]) -> float:
    """The growth under which the misses are likeliest, each with its own best scale."""
    spread = sum(math.log(size) for size in sizes)

    def unlikely(growth: float) -> float:
        scale = _scale(weighed, sizes, growth, Guess(0.0))
        return len(sizes) * math.log(scale) + growth * spread

    return min(GROWTHS, key=unlikely)


def _stands_still(before: Variances, after: Variances, close: float) -> bool:
    pairs = zip((*before.groups, before.scale), (*after.groups, after.scale), strict=True)
    return before.growth == after.growth and all(abs(a - b) <= close * max(a, b) for a, b in pairs)
