"""Whether the rate of one farm has really changed against its own past.

Method: after every period the newest 1 to `window` periods are held against all before them, by the exact chance
of so many (or so few) cases in them given the totals (`change_scan`). Where the chance is at most
`ChangeRule.chance`, also on the wider scale of a past that varied by more than chance, a change is flagged in the
period in which it was noticed, begun at the period where the chance is smallest (of equal ones the latest). The past
of later flags begins with the change. A flag looks back only: it does not go away when more is known. Unit: cases for
each cow seen, or for each cow-year; the flag has a direction and two sums, before and since.

False alarms: `stated_false_alarms` is the chance that a farm with a steady rate shows any flag in a chart like
this one (the same periods, the same number of cases in all). It needs no true rate, because given the total the
cases of a steady farm are spread over the periods by a known law; that law is drawn from `draws` times with a
seed made of the counts. So it is stated for each chart, and is smaller where few cases leave little to go by.
tests/bench/visits/bench_herd_change.py measures it on 20,000 steady herds of each way of counting,
whose rates the chart does not know, and prints how long a doubled rate takes to be noticed.

Why not a cusum of scores with a mark drawn inside the step of each count: it has one stated rate for all farms,
but with few cases the drawn mark decides, so that two farms with the same counts get different charts, and a farm
that never had a case can be flagged. Here counts alone decide.

Source: the conditional law and scanning for a change point are textbook (Fisher; Hawkins and Olwell 1998 on
self-starting charts; from memory); the combination is ours.

When the figure must not be shown: for counts of selective rounds (how lame the cows were that were fetched is no
change of the herd). The stated rate holds for cases that come singly and by chance. Lesions that spread from cow to
cow or follow the season vary more; the spread of the past guards against it in part, but such farms are flagged more
often than stated (the bench prints by how much). So a flag says "more than chance", not why. Use whole years, or the
same season, where a season is known to matter.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from functools import lru_cache

import numpy as np

from visits.domain.herd.change_counts import USUAL_CHANGE_RULE, ChangeRule, Counted, Counting
from visits.domain.herd.change_scan import (
    Running,
    ever_flagged,
    first_to_compare,
    running,
    stable_histories,
    tail_chances,
)

__all__ = ["ChangeChart", "ChangeRule", "Counted", "Counting", "Direction", "Flag", "change_chart"]


class Direction(StrEnum):
    """Which way a rate went."""

    RISEN = "risen"
    FALLEN = "fallen"


@dataclass(frozen=True)
class Flag:
    """A change begun with the period `since` and told by the end of period `noticed`.

    `before` is the sum of the past it was held against, `after` that of the periods from `since` to `noticed`.
    `chance` is how unlikely `after` is if nothing had changed; since the unlikeliest of many is flagged, do not
    show it as a test.
    """

    direction: Direction
    since: date
    noticed: date
    before: Counted
    after: Counted
    chance: float


@dataclass(frozen=True)
class ChangeChart:
    """The periods that had any exposure, the flags in order, and how often a steady farm shows any flag (0 to 1).

    `stated_false_alarms` is None when the chart is too short or the cases too few to flag anything.
    """

    points: tuple[Counted, ...]
    flags: tuple[Flag, ...]
    stated_false_alarms: float | None
    counting: Counting

    @property
    def standing(self) -> Flag | None:
        """The last change that was flagged."""
        return self.flags[-1] if self.flags else None


def change_chart(
    counts: Sequence[Counted], counting: Counting, rule: ChangeRule = USUAL_CHANGE_RULE
) -> ChangeChart:
    """The chart of one farm's periods. ValueError for counts that cannot be."""
    _check(counts, counting)
    points = tuple(sorted((count for count in counts if count.exposure > 0), key=lambda c: c.start))
    cases = np.array([[float(point.cases) for point in points]])
    exposure = tuple(point.exposure for point in points)
    flags = _flags(points, running(cases, np.array(exposure)), counting, rule)
    total = sum(point.cases for point in points)
    enough = len(points) > rule.least_past and total >= rule.least_cases
    return ChangeChart(
        points, flags, false_alarms(total, exposure, counting, rule) if enough else None, counting
    )


@lru_cache(maxsize=256)
def false_alarms(cases: int, exposure: tuple[float, ...], counting: Counting, rule: ChangeRule) -> float:
    """How often a steady farm with so many cases in all over these periods shows any flag."""
    amounts = np.array(exposure)
    steady = stable_histories(cases, amounts, counting, rule)
    return float(ever_flagged(steady, amounts, counting, rule).mean())


def _check(counts: Sequence[Counted], counting: Counting) -> None:
    for count in counts:
        if count.cases < 0 or count.exposure < 0 or (count.exposure == 0 and count.cases):
            raise ValueError(f"{count.cases} cases over {count.exposure} cannot be")
        if counting is Counting.OF_COWS_SEEN and (
            count.cases > count.exposure or count.exposure != int(count.exposure)
        ):
            raise ValueError(f"{count.cases} of {count.exposure} cows cannot be")


def _flags(
    points: tuple[Counted, ...], totals: Running, counting: Counting, rule: ChangeRule
) -> tuple[Flag, ...]:
    flags: list[Flag] = []
    begin = 0
    for newest in range(len(points)):
        # because: `since` stands negative, so that of equal chances the latest begin comes first
        told: list[tuple[float, int, Direction]] = []
        for since in first_to_compare(newest, begin, rule):
            rise, fall = tail_chances(totals, (begin, since, newest + 1), counting, rule)
            told += [
                (float(rise[0]), -since, Direction.RISEN),
                (float(fall[0]), -since, Direction.FALLEN),
            ]
        if told and min(told)[0] <= rule.chance:
            chance, back, direction = min(told)
            since = -back
            before, after = points[begin:since], points[since : newest + 1]
            flags.append(Flag(direction, after[0].start, after[-1].start, _sum(before), _sum(after), chance))
            begin = since
    return tuple(flags)


def _sum(counts: Sequence[Counted]) -> Counted:
    return Counted(
        counts[0].start,
        counts[-1].end,
        sum(count.cases for count in counts),
        sum(count.exposure for count in counts),
    )
