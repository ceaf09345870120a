"""The few shapes of chance that the generator draws from. One seeded source is handed through."""

import math
from collections.abc import Mapping
from random import Random


def happens(chance: Random, share: float) -> bool:
    return chance.random() < share


def one_of(chance: Random, shares: Mapping[str, float]) -> str:
    """A key, each in proportion to its share."""
    return chance.choices(list(shares), list(shares.values()))[0]


def factor(chance: Random, variance: float) -> float:
    """A positive factor with mean 1 and that variance (gamma)."""
    return chance.gammavariate(1 / variance, variance) if variance else 1.0


def swing(chance: Random, spread: float) -> float:
    """A factor about 1 with that spread of its logarithm."""
    return math.exp(chance.gauss(0, spread))


def how_many(chance: Random, mean: float) -> int:
    """A Poisson number (Knuth's product of uniforms; means here are small)."""
    limit, product, count = math.exp(-mean), chance.random(), 0
    while product > limit:
        product *= chance.random()
        count += 1
    return count


def mean_for_any(share: float, variance: float) -> float:
    """The mean number per cow at which `share` of cows have one or more, when cows differ with `variance`.

    With a gamma factor the count is negative binomial, so P(0) = (1 + mean * variance) ** (-1 / variance).
    """
    return float(((1 - share) ** -variance - 1) / variance) if variance else -math.log(1 - share)
