"""Amounts laid on even steps, so that sums of them can be told exactly.

Method: the step is the greatest common measure of the amounts that make up `COMMON` of all uses (1 block, 40 ml, half a
pair). A rare amount that falls between two steps (a count corrected by 37 ml) is shared out between them so that its
mean is kept (local moment matching, Gerber 1982; from memory). Where the common measure is finer than a `FINEST` of a
usual amount, a coarser multiple of it is taken.
"""

from collections import defaultdict
from dataclasses import dataclass
from decimal import ROUND_FLOOR, Decimal
from math import ceil, gcd

import numpy as np

from visits.domain.kit.forecast.amounts import Amounts
from visits.domain.kit.forecast.spread import Floats

COMMON = 0.95
FINEST = 50
HUNDREDTHS = 100
"""The ledger keeps two decimals."""


@dataclass(frozen=True)
class Cells:
    """`chances[i]` is the chance of `first + i` steps; `first` may be below nought."""

    first: int
    chances: Floats


def common_step(amounts: Amounts) -> Decimal:
    """The step that these amounts are told in; 1 where there are none but nought."""
    seen = Amounts((abs(amount), weight) for amount, weight in amounts.items() if amount and weight > 0)
    if not seen:
        return Decimal(1)
    left = COMMON * seen.weight
    measure, usual = 0, 0.0
    # Of two amounts as frequent the smaller one comes first, so that the same uses give the same step.
    for amount, weight in sorted(seen.items(), key=lambda pair: (-pair[1], pair[0])):
        if left <= 0:
            break
        measure = gcd(measure, max(1, round(amount * HUNDREDTHS)))
        usual = usual or float(amount) * HUNDREDTHS
        left -= weight
    return Decimal(measure * max(1, ceil(usual / (FINEST * measure)))) / HUNDREDTHS


def laid_on(amounts: Amounts, step: Decimal) -> Cells:
    """The chances of these amounts, in steps. ValueError without any."""
    shares: defaultdict[int, float] = defaultdict(float)
    for amount, weight in amounts.items():
        below = int((amount / step).to_integral_value(ROUND_FLOOR))
        over = float(amount / step) - below
        shares[below] += weight * (1 - over)
        if over:
            shares[below + 1] += weight * over
    kept = {at: weight for at, weight in shares.items() if weight > 0}
    if not kept:
        raise ValueError("no amounts to lay out")
    first = min(kept)
    chances = np.zeros(max(kept) - first + 1)
    for at, weight in kept.items():
        chances[at - first] = weight
    return Cells(first, chances / chances.sum())
