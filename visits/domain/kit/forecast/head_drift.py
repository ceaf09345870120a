"""How many cows really come, of those that were booked.

Method: what the business's own visits did, visit by visit: with few heads the difference in cows, with more the part
of the booked heads, each as often as it was seen, after a usual picture worth `WORTH` visits (common practice, no
source). Whether a booked visit is made at all starts from `CALLED_OFF`, worth as many.
"""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

FEW = 6
WORTH = 8.0
CALLED_OFF = 0.03
USUAL_FEW = {0.0: 0.8, 1.0: 0.1, -1.0: 0.1}
USUAL_PARTS = {1.0: 0.6, 0.9: 0.15, 1.1: 0.15, 0.8: 0.05, 1.2: 0.05}
PART_STEP = 20
"""Parts are told to the twentieth."""


@dataclass(frozen=True)
class Heads:
    """A visit of the past: heads booked, cows seen, how much it counts; `seen` is None where it was called off."""

    booked: int
    seen: int | None
    weight: float


@dataclass(frozen=True)
class HeadDrift:
    """`few` are differences in cows, `parts` parts of the heads booked, both with their weights."""

    called_off: float
    few: Mapping[float, float]
    parts: Mapping[float, float]

    def cows(self, booked: int) -> dict[int, float]:
        """Number of cows -> its chance, for a visit with `booked` heads; nought where it is called off."""
        if booked <= 0:
            return {0: 1.0}
        shares = self.few if booked <= FEW else self.parts
        whole = sum(shares.values())
        found = defaultdict(float, {0: self.called_off})
        for by, weight in shares.items():
            cows = booked + by if booked <= FEW else booked * by
            # A visit that is made has a cow at least.
            found[max(1, round(cows))] += (1 - self.called_off) * weight / whole
        return dict(found)


def learn_heads(past: Iterable[Heads]) -> HeadDrift:
    """From visits whose booked heads are known."""
    few = _usual(USUAL_FEW)
    parts = _usual(USUAL_PARTS)
    made, off = WORTH * (1 - CALLED_OFF), WORTH * CALLED_OFF
    for heads in past:
        if heads.seen is None:
            off += heads.weight
            continue
        made += heads.weight
        if 0 < heads.booked <= FEW:
            few[heads.seen - heads.booked] += heads.weight
        elif heads.booked > FEW:
            parts[round(heads.seen / heads.booked * PART_STEP) / PART_STEP] += heads.weight
    return HeadDrift(off / (made + off), few, parts)


def _usual(shares: Mapping[float, float]) -> defaultdict[float, float]:
    return defaultdict(float, {by: WORTH * share for by, share in shares.items()})
