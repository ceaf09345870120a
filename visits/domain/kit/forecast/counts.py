"""How many there are: exact chances of numbers of cows and of visits, and of sums of so many sizes.

Method: closed forms. Cows of a visit: beta-binomial. Visits of a day: binomial, Poisson or negative binomial, whichever
has the mean and the variance that were seen (Panjer's class; Klugman, Panjer and Willmot, Loss Models, from memory).
A sum of a random number of sizes is worked out by Horner's rule, convolution by convolution.
"""

from math import ceil

import numpy as np
from scipy import special

from visits.domain.kit.forecast.spread import Floats, cut, summed

ALIKE = 0.02
LIKE_POISSON = 1.0


def beta_binomial(cows: int, curve: tuple[float, float]) -> Floats:
    """The chances of 0 to `cows` that use some, their chance drawn once for all from the beta curve (a, b)."""
    a, b = curve
    k = np.arange(cows + 1)
    logs = special.betaln(k + a, cows - k + b) - special.betaln(a, b)
    ways = special.gammaln(cows + 1) - special.gammaln(k + 1) - special.gammaln(cows - k + 1)
    chances: Floats = np.exp(logs + ways)
    whole: Floats = chances / chances.sum()
    return whole


def number_of_visits(mean: float, ratio: float) -> Floats:
    """The chances of 0, 1, 2 ... visits with that mean; `ratio` is variance over mean, above nought."""
    if mean <= 0:
        return np.ones(1)
    if abs(ratio - LIKE_POISSON) < ALIKE:
        return _grown(np.exp(-mean), 0.0, mean)
    if ratio > LIKE_POISSON:
        missed = 1 - 1 / ratio
        size = mean / (ratio - 1)
        return _grown((1 - missed) ** size, missed, (size - 1) * missed)
    trials = ceil(mean / (1 - ratio))
    odds = (mean / trials) / (1 - mean / trials)
    return _grown((1 - mean / trials) ** trials, -odds, (trials + 1) * odds, most=trials)


def _grown(first: float, a: float, b: float, most: int = 1000) -> Floats:
    """Panjer's recursion of a number: chance(n) = (a + b / n) chance(n - 1)."""
    chances, held = [first], first
    while len(chances) <= most and 1 - held > 1e-15 and len(chances) < 1000:
        n = len(chances)
        chances.append(chances[-1] * (a + b / n))
        held += chances[-1]
        if chances[-1] < 1e-18 and n > b:
            break
    found = np.array(chances)
    return cut(found / found.sum())


def sum_of(numbers: Floats, size: Floats) -> Floats:
    """The cells of a sum of so many sizes (`numbers[n]` is the chance of n), each with the cells `size`."""
    if len(size) == 2 and size[0] == 0:
        return numbers
    found = numbers[-1:]
    for chance in numbers[-2::-1]:
        found = np.convolve(found, size)
        found[0] += chance
    return cut(found)


def times(cells: Floats, number: int) -> Floats:
    """The cells of the sum of `number` of these, which do not hang together."""
    found = np.ones(1)
    square = cells
    while number:
        if number & 1:
            found = summed(found, square)
        number >>= 1
        if number:
            square = summed(square, square)
    return found
