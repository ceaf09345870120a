"""Two groups of cows compared by one outcome: a 2 by 2 table and what may be said of it.

Method: relative risk with Katz's log interval, odds ratio with Woolf's, risk difference with Newcombe's (method 10)
and, because trials print it, with the simple normal (Wald) one; number needed to treat is 1 over the difference;
Fisher's exact test, two-sided: all tables no likelier than the one found; chi square without correction (Pearson).
Unit: shares 0 to 1, ratios plain. Source of the methods: see `intervals`; Fisher as in every textbook, the small
tolerance for ties as in R and scipy. Held against Thomas et al. 2015 (trade-facts 3.6), scipy and statsmodels.

Must not be shown when the groups were not chosen alike (lame cows against a herd trim): it compares, it does not
explain. A ratio is None where a zero cell leaves it without a value; its interval then is None too.
"""

import math
from dataclasses import dataclass
from functools import cached_property

from scipy import special

from visits.domain.herd.intervals import LEVEL, Interval, log_ratio, newcombe, normal_quantile

TIES = 1 + 1e-7


@dataclass(frozen=True)
class TwoGroups:
    """`a` with and `b` without the outcome in the first group, `c` and `d` in the other. Each cow stands once."""

    a: int
    b: int
    c: int
    d: int
    level: float = LEVEL

    def __post_init__(self) -> None:
        if min(self.a, self.b, self.c, self.d) < 0:
            raise ValueError(f"counts below 0 cannot be: {self.a}, {self.b}, {self.c}, {self.d}")
        if self.a + self.b == 0 or self.c + self.d == 0:
            raise ValueError("a group without cows cannot be compared")

    @property
    def first_total(self) -> int:
        return self.a + self.b

    @property
    def other_total(self) -> int:
        return self.c + self.d

    @property
    def has_zero_cell(self) -> bool:
        """With a zero cell the ratios have no log interval; the difference and Fisher's test still stand."""
        return 0 in (self.a, self.b, self.c, self.d)

    @property
    def relative_risk(self) -> float | None:
        """None when nobody in the other group had the outcome."""
        return (self.a / self.first_total) / (self.c / self.other_total) if self.c else None

    @property
    def relative_risk_interval(self) -> Interval | None:
        """None when one group had no outcome at all: the log of 0 has no standard error."""
        ratio = self.relative_risk
        if not ratio:
            return None
        spread = 1 / self.a - 1 / self.first_total + 1 / self.c - 1 / self.other_total
        return log_ratio(ratio, math.sqrt(max(0.0, spread)), self.level)

    @property
    def odds_ratio(self) -> float | None:
        return self.a * self.d / (self.b * self.c) if self.b and self.c else None

    @property
    def odds_ratio_interval(self) -> Interval | None:
        ratio = self.odds_ratio
        if not ratio:
            return None
        return log_ratio(ratio, math.sqrt(1 / self.a + 1 / self.b + 1 / self.c + 1 / self.d), self.level)

    @property
    def risk_difference(self) -> float:
        return self.a / self.first_total - self.c / self.other_total

    @property
    def risk_difference_interval(self) -> Interval:
        return newcombe(self.a, self.first_total, self.c, self.other_total, self.level)

    @property
    def simple_difference_interval(self) -> Interval:
        """The normal interval that trials print; too narrow for few cows, so it is for checking them only."""
        first, other = self.a / self.first_total, self.c / self.other_total
        spread = first * (1 - first) / self.first_total + other * (1 - other) / self.other_total
        half = normal_quantile(self.level) * math.sqrt(spread)
        return Interval(self.risk_difference - half, self.risk_difference + half, self.level)

    @property
    def needed_to_treat(self) -> float | None:
        """Cows in the first group for one more outcome than in the other; below 0 for one fewer; None for none."""
        return 1 / self.risk_difference if self.risk_difference else None

    @property
    def needed_to_treat_interval(self) -> Interval | None:
        """None when the difference may be none: the number then reaches endless (Altman 1998, BMJ 317:1309)."""
        gap = self.risk_difference_interval
        return None if gap.holds(0.0) else Interval(1 / gap.high, 1 / gap.low, self.level)

    @cached_property
    def fisher_p(self) -> float:
        """How often tables with these margins are no likelier than this one when the groups are alike."""
        outcomes, smallest = self.a + self.c, max(0, self.a - self.d)
        logs = {k: self._log_ways(k) for k in range(smallest, min(self.first_total, outcomes) + 1)}
        peak = max(logs.values())
        weights = {k: math.exp(log - peak) for k, log in logs.items()}
        limit = weights[self.a] * TIES
        return min(1.0, math.fsum(w for w in weights.values() if w <= limit) / math.fsum(weights.values()))

    @property
    def chi_square(self) -> float | None:
        """Pearson's, one degree of freedom; None when all or none had the outcome."""
        outcomes, others = self.a + self.c, self.b + self.d
        if not outcomes or not others:
            return None
        cross = self.a * self.d - self.b * self.c
        return cross * cross * (outcomes + others) / (self.first_total * self.other_total * outcomes * others)

    @property
    def chi_square_p(self) -> float | None:
        found = self.chi_square
        return None if found is None else float(special.chdtrc(1, found))

    def _log_ways(self, k: int) -> float:
        """The log of how many tables have `k` outcomes in the first group, the margins as they are."""
        return _log_choose(self.first_total, k) + _log_choose(self.other_total, self.a + self.c - k)


def _log_choose(total: int, k: int) -> float:
    return math.lgamma(total + 1) - math.lgamma(k + 1) - math.lgamma(total - k + 1)
