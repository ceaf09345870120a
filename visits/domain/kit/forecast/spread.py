"""The chances of an amount that comes in whole steps.

Method: exact. Sums of independent amounts are convolved cell by cell (numpy's direct convolution, no transform and no
curve put in place of the cells). Unit: that of the consumable. What lies so far out that all of it together is less
likely than `NEGLIGIBLE` is added to the last cell kept, so that chances sum to 1 and no quantile becomes lower.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Flags = NDArray[np.bool_]
Wholes = NDArray[np.int64]
NEGLIGIBLE = 1e-13
ROUNDING = 1e-12
"""A quantile is not put a step higher because sums of floats miss the chance by so much."""


@dataclass(frozen=True)
class Spread:
    """`chances[i]` is the chance that the amount is `i * step`; they sum to 1. ValueError where they do not."""

    step: Decimal
    chances: tuple[float, ...]

    def __post_init__(self) -> None:
        if self.step <= 0:
            raise ValueError(f"a step of {self.step} leads nowhere")
        if not self.chances or min(self.chances) < 0 or abs(sum(self.chances) - 1) > 1e-6:
            raise ValueError("chances are not below nought and sum to 1")

    @classmethod
    def of_cells(cls, step: Decimal, cells: Floats) -> "Spread":
        return cls(step, tuple(cells.tolist()))

    @classmethod
    def nothing(cls, step: Decimal = Decimal(1)) -> "Spread":
        """Surely none."""
        return cls(step, (1.0,))

    @cached_property
    def cells(self) -> Floats:
        return np.array(self.chances)

    @cached_property
    def _until(self) -> Floats:
        return np.cumsum(self.cells)

    @property
    def mean(self) -> float:
        return float(np.dot(self.cells, np.arange(len(self.cells)))) * float(self.step)

    @property
    def variance(self) -> float:
        values = np.arange(len(self.cells)) * float(self.step)
        return float(np.dot(self.cells, (values - self.mean) ** 2))

    def quantile(self, chance: float) -> Decimal:
        """The least amount that is not exceeded with that chance; 0 to 1, ValueError else."""
        if not 0 <= chance <= 1:
            raise ValueError(f"{chance} is no chance")
        at = int(np.searchsorted(self._until, chance - ROUNDING))
        return self.step * min(at, len(self.cells) - 1)

    def chance_above(self, amount: Decimal | float) -> float:
        """The chance of more than `amount`."""
        kept = steps_within(amount, self.step)
        return 1.0 if kept < 0 else max(0.0, float(self.cells[kept + 1 :].sum()))

    def plus(self, other: "Spread") -> "Spread":
        """Of the sum of both, which do not hang together. ValueError where they are told in different steps."""
        if self.step != other.step:
            raise ValueError(f"steps of {self.step} and of {other.step} are not added")
        return Spread.of_cells(self.step, summed(self.cells, other.cells))


def steps_within(amount: Decimal | float, step: Decimal) -> int:
    """How many whole steps fit; -1 below nought."""
    exact = amount if isinstance(amount, Decimal) else Decimal(repr(float(amount)))
    return -1 if exact < 0 else int(exact / step + Decimal("1e-9"))


def total(spreads: Iterable[Spread], step: Decimal) -> Spread:
    """Of the sum of all, which do not hang together."""
    found = np.ones(1)
    for spread in spreads:
        found = summed(found, spread.cells)
    return Spread.of_cells(step, found)


def summed(one: Floats, other: Floats) -> Floats:
    """The cells of the sum."""
    return cut(np.convolve(one, other))


def cut(cells: Floats) -> Floats:
    """Without the far cells that all together hold less than `NEGLIGIBLE`; the last one kept takes theirs."""
    beyond = np.cumsum(cells[::-1])[::-1]
    kept = max(1, int(np.count_nonzero(beyond > NEGLIGIBLE)))
    if kept == len(cells):
        return cells
    short = cells[:kept].copy()
    short[-1] += beyond[kept]
    return short
