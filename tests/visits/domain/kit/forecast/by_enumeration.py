"""Sums of chances told by going through every case, in fractions: nothing of the product is used.

A distribution is a dict from amount (Fraction) to chance (Fraction).
"""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from fractions import Fraction
from itertools import product
from math import comb

Chances = dict[Fraction, Fraction]


def each_with_each(parts: Iterable[Mapping[Fraction, Fraction]]) -> Chances:
    """Of the sum of independent parts: every combination of their values."""
    found: Chances = defaultdict(Fraction)
    for case in product(*(part.items() for part in parts)):
        chance = Fraction(1)
        for _, own in case:
            chance *= own
        found[sum((value for value, _ in case), Fraction(0))] += chance
    return dict(found)


def mixed(parts: Iterable[tuple[Fraction, Mapping[Fraction, Fraction]]]) -> Chances:
    found: Chances = defaultdict(Fraction)
    for weight, chances in parts:
        for value, chance in chances.items():
            found[value] += weight * chance
    return dict(found)


def rising(x: Fraction, times: int) -> Fraction:
    found = Fraction(1)
    for n in range(times):
        found *= x + n
    return found


def beta_binomial(n: int, a: Fraction, b: Fraction) -> list[Fraction]:
    """Chances of 0 to n by rising factorials."""
    return [comb(n, k) * rising(a, k) * rising(b, n - k) / rising(a + b, n) for k in range(n + 1)]


def binomial(n: int, p: Fraction) -> list[Fraction]:
    return [comb(n, k) * p**k * (1 - p) ** (n - k) for k in range(n + 1)]


def sum_of(numbers: Iterable[Fraction], size: Mapping[Fraction, Fraction]) -> Chances:
    """Of a random number of sizes."""
    return mixed((chance, each_with_each([size] * n)) for n, chance in enumerate(numbers))


def quantile(chances: Mapping[Fraction, Fraction], level: Fraction) -> Fraction:
    """The least amount that is not exceeded with that chance."""
    so_far = Fraction(0)
    for value in sorted(chances):
        so_far += chances[value]
        if so_far >= level:
            return value
    raise AssertionError("chances do not sum to 1")
