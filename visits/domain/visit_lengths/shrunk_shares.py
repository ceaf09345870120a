"""Shares of groups drawn towards the share of all: the fewer a group was seen, the further.

Method: James and Stein's estimator with the grand mean (Efron and Morris 1975, "Data analysis using Stein's estimator
and its generalizations"; from memory), which takes k - 3 in place of k - 1; with groups of unequal size each is drawn
in by its own variance.
"""

from collections.abc import Sequence
from dataclasses import dataclass

ENOUGH = 10
"""Groups with fewer trials say nothing about how much groups differ."""


@dataclass(frozen=True)
class ShrunkShares:
    """The share of all, how much groups truly differ (variance), and each group's shrunk share."""

    overall: float
    between: float
    shares: tuple[float, ...]

    def share_of(self, hits: float, trials: float) -> float:
        """Any group's share, drawn in; without trials it is the share of all."""
        if trials <= 0 or self.between <= 0:
            return self.overall
        within = self.overall * (1 - self.overall) / trials
        return self.overall + self.between / (self.between + within) * (hits / trials - self.overall)


def shrink_shares(
    hits: Sequence[float], trials: Sequence[float], *, usual: float, worth: float
) -> ShrunkShares:
    """Each group's share; the share of all starts from `usual`, worth so many trials."""
    overall = (sum(hits) + worth * usual) / (sum(trials) + worth) if sum(trials) + worth else usual
    between = _between(hits, trials, overall)
    first = ShrunkShares(overall, between, ())
    return ShrunkShares(
        overall, between, tuple(first.share_of(h, n) for h, n in zip(hits, trials, strict=True))
    )


def _between(hits: Sequence[float], trials: Sequence[float], overall: float) -> float:
    """How much groups differ beyond chance."""
    known = [(h / n, n) for h, n in zip(hits, trials, strict=True) if n >= ENOUGH]
    if len(known) < 4:
        return 0.0
    seen = sum((share - overall) ** 2 for share, _ in known) / (len(known) - 3)
    by_chance = sum(overall * (1 - overall) / n for _, n in known) / len(known)
    return max(0.0, seen - by_chance)
