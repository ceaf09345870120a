"""Many days priced at once: cost less the prices of the jobs done and of the shift used."""

from collections.abc import Sequence
from importlib import import_module
from types import ModuleType

from visits.domain.planning.board import Order


class ReducedCosts:
    """Days by number. `at` sets the prices of the rows; days left aside are not proposed again."""

    def __init__(self, days: Sequence[tuple[int, Order]], costs: Sequence[float], shift_row: int) -> None:
        np: ModuleType = import_module("numpy")
        self.np = np
        self.costs = np.array(costs, dtype=np.float64)
        self.shift = np.array([shift_row + shift for shift, _ in days], dtype=np.int64)
        self.jobs = np.array([job for _, order in days for job in order], dtype=np.int64)
        sizes = np.array([len(order) for _, order in days], dtype=np.int64)
        self.starts = np.cumsum(sizes) - sizes
        self.waiting = np.ones(len(costs), dtype=bool)
        self.reduced = self.costs

    def at(self, prices: Sequence[float]) -> None:
        """Prices of all rows, jobs first."""
        if len(self.costs):
            price = self.np.array(prices)
            paid = self.np.add.reduceat(price[self.jobs], self.starts)
            self.reduced = self.costs - paid - price[self.shift]

    def leave_aside(self, days: Sequence[int]) -> None:
        """These are in the model already."""
        self.waiting[list(days)] = False

    def cheapest(self, limit: float, most: int) -> list[int]:
        """Waiting days below the limit, the cheapest first, ties by number."""
        return self._below(self.waiting & (self.reduced < limit), most)

    def within(self, limit: float, most: int) -> list[int]:
        """All days at most at the limit, the cheapest first, ties by number."""
        return self._below(self.reduced <= limit, most)

    def _below(self, mask: object, most: int) -> list[int]:
        found = self.np.flatnonzero(mask)
        order = self.np.argsort(self.reduced[found], kind="stable")
        return [int(day) for day in found[order][:most]]
