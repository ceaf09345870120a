"""Amounts by how often they were seen."""

from collections import defaultdict
from collections.abc import Iterable
from decimal import Decimal


class Amounts(defaultdict[Decimal, float]):
    """Amount -> weight."""

    def __init__(self, pairs: Iterable[tuple[Decimal, float]] = ()) -> None:
        super().__init__(float)
        for amount, weight in pairs:
            self[amount] += weight

    def and_also(self, other: "Amounts", times: float = 1.0) -> "Amounts":
        """Both together, the other's weights so many times."""
        found = Amounts(self.items())
        for amount, weight in other.items():
            found[amount] += weight * times
        return found

    @property
    def weight(self) -> float:
        return sum(self.values())
