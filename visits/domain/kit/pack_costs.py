"""First in, first out: what the units cost, in the order in which they were bought.

The method is that of IAS 2 "Inventories", paragraph 27 (from memory): what is bought first is used first, so what is
left was bought last. It goes over the whole business; moving changes no cost.
"""

from bisect import bisect_left
from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Pack:
    """`quantity` in hundredths of the unit, above nought; `cost` of all of it in hundredths of money."""

    quantity: int
    cost: int | None  # None: not said


class PackCosts:
    """Packs as one long row of units. The unit number u is the u-th that leaves, whoever takes it.

    What leaves before anything was bought counts too: so it is costed from the next that is bought. What a count finds
    goes back to the end of the row; beyond its beginning lies stock that was there before all packs, at no known cost.

    Costs are rounded by sums: what the first u units cost is rounded half up, and a part of the row costs the
    difference of two such sums. So parts that follow each other add up to the penny, however small they are.
    """

    def __init__(self, packs: Iterable[Pack]) -> None:
        self._packs = list(packs)
        self._ends: list[int] = []
        self._costs: list[int] = []
        self._unknown: list[int] = []
        self.units = self.paid = unknown = 0
        for pack in self._packs:
            self._costs.append(self.paid)
            self._unknown.append(unknown)
            self.units += pack.quantity
            self.paid += pack.cost or 0
            unknown += pack.quantity if pack.cost is None else 0
            self._ends.append(self.units)
        self._all_unknown = unknown

    def between(self, before: int, after: int) -> int:
        """What leaving costs when `before` units had left and then `after`; below nought where units come back."""
        return self._first(after) - self._first(before)

    def are_known(self, before: int, after: int) -> bool:
        """Whether the units between were bought, with a price."""
        low, high = min(before, after), max(before, after)
        return low >= 0 and high <= self.units and self._unknown_of(low) == self._unknown_of(high)

    def left(self, gone: int) -> int:
        """What the units that are left cost when `gone` have left."""
        return self.paid - self._first(gone)

    def _first(self, units: int) -> int:
        """What the first so many units cost, rounded half up."""
        if units <= 0:
            return 0
        if units >= self.units:
            return self.paid
        number = bisect_left(self._ends, units)
        pack = self._packs[number]
        part = units - (self._ends[number] - pack.quantity)
        return self._costs[number] + (2 * (pack.cost or 0) * part + pack.quantity) // (2 * pack.quantity)

    def _unknown_of(self, units: int) -> int:
        """How many of the first so many units were bought without a price."""
        if units >= self.units:
            return self._all_unknown
        number = bisect_left(self._ends, units)
        pack = self._packs[number]
        part = units - (self._ends[number] - pack.quantity)
        return self._unknown[number] + (part if pack.cost is None else 0)
