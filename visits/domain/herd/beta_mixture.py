"""A mixture of beta curves: what is known of a share when the curve itself is not known for sure.

Method: weights on beta curves; the chance that the share lies below a value is the weighted sum of the
regularised incomplete beta function; bounds with equal tails by Brent's search. Unit: shares 0 to 1. Source:
textbook. When it must not be shown: it is a tool, never a figure.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy import optimize, special

from visits.domain.herd.intervals import LEVEL, Interval

Floats = NDArray[np.float64]
NEAR = 1e-9


@dataclass(frozen=True)
class BetaMixture:
    """Curves with parameters `a` and `b`, their `weights` (sum 1)."""

    a: Floats
    b: Floats
    weights: Floats

    @property
    def mean(self) -> float:
        return float(np.sum(self.weights * self.a / (self.a + self.b)))

    def chance_below(self, value: float) -> float:
        """The chance that the share is at most `value`, which lies between 0 and 1."""
        return float(np.sum(self.weights * special.betainc(self.a, self.b, value)))

    def quantile(self, chance: float) -> float:
        """The value below which it lies with that chance."""
        return float(optimize.brentq(lambda value: self.chance_below(value) - chance, 0.0, 1.0, xtol=NEAR))

    def interval(self, level: float = LEVEL) -> Interval:
        """With equal tails."""
        tail = (1 - level) / 2
        return Interval(self.quantile(tail), self.quantile(1 - tail), level)
