"""Which edges to grind before each day, and how many knives to carry.

The knives of a van that do the same job (kind and hand) are worked one after the other: an edge until it goes dull,
then the next, which finishes that cow. A day is lost when the last sharp edge goes dull with cows still to come. So the
chance that is held under the limit is P(cows that all the edges cut sharp < cows of the day), by exact convolution of
what is left on each edge; the edges are taken to be independent.

Method, greedy: the edge that gains most by it (in cows expected, no more than the day has) is ground first, then the
next, until the chance is under the limit or no edge is left to grind. Where edges follow one curve and wear can only
shorten what is left, that is the fewest edges possible; the test compares with trying every choice. To carry: the
fewest edges, the longest lasting first, that hold the limit.

After a day the edges are taken to have lasted as long as they do on average, the most worn used first. So the first day
is exact and those behind it a look ahead: it is planned anew every evening.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date

import numpy as np

from visits.domain.kit.edge_life import EdgeLife, Floats


@dataclass(frozen=True)
class EdgeNow:
    """The edge on a blade: cows behind it, whether it is dull, how long such an edge lasts, and a new one after it."""

    blade: int
    cows: int
    life: EdgeLife
    fresh: EdgeLife
    is_dull: bool = False

    def left(self, most: int) -> Floats:
        """Chances of 0, 1, ... more cows, the last `most` or more."""
        return self.life.left(self.life.reach if self.is_dull else self.cows, most)

    def mean_left(self, most: int) -> float:
        """Cows expected, none beyond `most` counted."""
        return float(np.arange(most + 1) @ self.left(most))

    def ground(self) -> "EdgeNow":
        """The blade with a new edge."""
        return EdgeNow(self.blade, 0, self.fresh, self.fresh)


@dataclass(frozen=True)
class DayOfCows:
    """A day on which the van goes out, and the cows that are expected."""

    day: date
    cows: int


@dataclass(frozen=True)
class DayPlan:
    """`grind` before the day, in that order; `carry`: how many knives, at least. `chance`: that the edges do not last;
    `chance_unground`: the same if nothing is ground. `is_held` False: even all of them ground do not hold the limit.
    """

    day: date
    cows: int
    grind: tuple[int, ...]
    carry: tuple[int, ...]
    chance: float
    chance_unground: float
    is_held: bool


def grinding_plan(edges: Sequence[EdgeNow], days: Sequence[DayOfCows], limit: float) -> tuple[DayPlan, ...]:
    """The plan of each day in order. `limit`: the chance that is accepted, 0 to 1."""
    plans: list[DayPlan] = []
    now = list(edges)
    for day in sorted(days, key=lambda day: day.day):
        now, plan = _plan_day(now, day, limit)
        plans.append(plan)
        now = _after(now, day.cows)
    return tuple(plans)


def chance_short(edges: Sequence[EdgeNow], cows: int) -> float:
    """The chance that these edges, one after the other, do not last so many cows."""
    if cows <= 0:
        return 0.0
    total = np.zeros(cows + 1)
    total[0] = 1.0
    for edge in edges:
        both = np.convolve(total, edge.left(cows))
        total = np.append(both[:cows], both[cows:].sum())
    return float(total[:cows].sum())


def knives_to_carry(edges: Sequence[EdgeNow], cows: int, limit: float) -> tuple[int, ...] | None:
    """The fewest blades, the longest lasting first, whose edges last so many cows but for the accepted chance; None
    where all of them together do not."""
    best = sorted(edges, key=lambda edge: -edge.mean_left(cows))
    for number in range(len(best) + 1):
        if chance_short(best[:number], cows) <= limit:
            return tuple(edge.blade for edge in best[:number])
    return None


def knives_needed(fresh: EdgeLife, cows: int, limit: float, most: int = 12) -> int | None:
    """How many freshly ground knives a day of so many cows needs; None for more than `most`."""
    edge = EdgeNow(0, 0, fresh, fresh)
    return next((n for n in range(most + 1) if chance_short([edge] * n, cows) <= limit), None)


def _plan_day(edges: list[EdgeNow], day: DayOfCows, limit: float) -> tuple[list[EdgeNow], DayPlan]:
    unground = chance = chance_short(edges, day.cows)
    now, ground = list(edges), []
    while chance > limit:
        gains = [each.ground().mean_left(day.cows) - each.mean_left(day.cows) for each in now]
        best = max(range(len(now)), key=lambda place: gains[place], default=None)
        if best is None or gains[best] <= 0:
            break
        now[best] = now[best].ground()
        ground.append(now[best].blade)
        chance = chance_short(now, day.cows)
    carry = knives_to_carry(now, day.cows, limit)
    everything = tuple(each.blade for each in now)
    plan = DayPlan(
        day=day.day,
        cows=day.cows,
        grind=tuple(ground),
        carry=everything if carry is None else carry,
        chance=chance,
        chance_unground=unground,
        is_held=chance <= limit,
    )
    return now, plan


def _after(edges: Sequence[EdgeNow], cows: int) -> list[EdgeNow]:
    """The edges after a day, each having lasted as long as such edges do on average; the most worn were used first."""
    after: list[EdgeNow] = []
    for edge in sorted(edges, key=lambda edge: edge.mean_left(edge.life.reach)):
        lasts = round(edge.mean_left(edge.life.reach))
        used = min(cows, lasts)
        cows -= used
        after.append(replace(edge, cows=edge.cows + used, is_dull=edge.is_dull or used == lasts))
    return after
