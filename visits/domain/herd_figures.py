"""Shares of cows that hold water: always with the number seen, the herd, and an interval."""

import math
from dataclasses import dataclass

Z95 = 1.959963984540054


@dataclass(frozen=True)
class Share:
    """`count` of `seen` cows, of a herd of `herd`; `low` and `high` bound the share (0 to 1) at 95 %."""

    count: int
    seen: int
    herd: int
    low: float
    high: float

    @property
    def share(self) -> float | None:
        return self.count / self.seen if self.seen else None


def share_of_seen(count: int, seen: int, herd: int) -> Share:
    """The share with its 95 % Wilson interval. ValueError on counts that cannot be."""
    if not 0 <= count <= seen:
        raise ValueError(f"{count} of {seen} cows cannot be")
    low, high = wilson_interval(count, seen) if seen else (0.0, 1.0)
    return Share(count, seen, herd, low, high)


def wilson_interval(count: int, total: int, z: float = Z95) -> tuple[float, float]:
    """Wilson's score interval for a proportion (Wilson 1927, JASA 22:209). ValueError when total is 0."""
    if total <= 0:
        raise ValueError("no cows were seen")
    share = count / total
    middle = share + z * z / (2 * total)
    spread = z * math.sqrt(share * (1 - share) / total + z * z / (4 * total * total))
    scale = 1 + z * z / total
    return (middle - spread) / scale, (middle + spread) / scale
