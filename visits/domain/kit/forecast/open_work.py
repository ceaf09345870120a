"""Work that is not booked yet: urgent calls of tomorrow, and weeks into which nobody has put anything.

Method: of each visit of the past the days of notice are known. So of a day so many days from this morning it is known
how many visits of a working day nobody had booked so long before, in the mean; the further ahead, the more, up to all
visits of a day. What is booked already is thereby left out. Their number is of Panjer's class with the variance of the
business's own weeks (`counts.py`), what each uses as often seen as it was (`open_sizes.py`). Working days are the
weekdays on which the business works.
"""

from collections import Counter, defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date

import numpy as np

from visits.domain.kit.forecast.counts import number_of_visits, sum_of
from visits.domain.kit.forecast.spread import Floats, summed
from visits.domain.kit.forecast.visit_use import VisitUse
from visits.domain.visit_states import VisitReason

WORTH_WEEKS = 8.0
SELDOM = 0.15
"""A weekday with less than this part of the visits of the busiest one is no working day."""
LEAST_RATIO = 0.4
USUAL_NOTICE = {VisitReason.URGENT: 1, VisitReason.RECHECK: 6, VisitReason.ROUTINE: 6}
"""Days, where it is not known when a visit was booked (common practice, no source)."""


@dataclass(frozen=True)
class Calls:
    """Visits for one reason: `within[n]` is how many a working day has with at most n days of notice (the last: all),
    `ratio` the variance of their number over its mean."""

    within: tuple[float, ...]
    ratio: float

    def still_open(self, ahead: int | None) -> float:
        """How many visits of a working day `ahead` days from this morning nobody has booked yet; None: nothing is."""
        return self.within[-1 if ahead is None else min(ahead, len(self.within) - 1)]


@dataclass(frozen=True)
class OpenWork:
    """`sizes` are the cells of what a visit uses, by its reason."""

    weekdays: frozenset[int] = frozenset()
    calls: Mapping[VisitReason, Calls] = field(default_factory=dict)
    sizes: Mapping[VisitReason, Floats] = field(default_factory=dict)

    def works_on(self, day: date) -> bool:
        return day.weekday() in self.weekdays

    def cells(self, ahead: int | None) -> Floats:
        """What the open work of one working day uses."""
        found = np.ones(1)
        for reason, calls in self.calls.items():
            number = number_of_visits(calls.still_open(ahead), calls.ratio)
            found = summed(found, sum_of(number, self.sizes[reason]))
        return found


def working_weekdays(days: Iterable[date]) -> frozenset[int]:
    """The weekdays of these days of visits, but for those on which work is an exception."""
    seen = Counter(day.weekday() for day in days)
    most = max(seen.values(), default=0)
    return frozenset(weekday for weekday, number in seen.items() if number >= SELDOM * most)


def learn_calls(past: Sequence[VisitUse], weigh: Mapping[date, float]) -> Calls:
    """Of visits for one reason. `weigh`: every working day of the history, and how much it counts."""
    whole = sum(weigh.values())
    notices: defaultdict[int, float] = defaultdict(float)
    weeks: Counter[int] = Counter()
    for visit in past:
        # Work on a day that is no working day is told with the working days.
        notices[_notice(visit)] += weigh.get(visit.day, 1.0)
        weeks[_week(visit.day)] += 1
    within = np.cumsum([notices[days] for days in range(max(notices, default=0) + 1)]) / max(whole, 1e-9)
    return Calls(tuple(within.tolist()), _ratio([weeks[week] for week in {_week(day) for day in weigh}]))


def _week(day: date) -> int:
    """The number of the week, which begins on a Monday."""
    return (day.toordinal() - 1) // 7


def _notice(visit: VisitUse) -> int:
    return max(0, USUAL_NOTICE[visit.reason] if visit.notice is None else visit.notice)


def _ratio(weeks: list[int]) -> float:
    """Variance over mean, drawn towards 1 as if `WORTH_WEEKS` weeks had said so."""
    mean = sum(weeks) / len(weeks) if weeks else 0.0
    if mean <= 0:
        return 1.0
    squares = sum((number - mean) ** 2 for number in weeks)
    return max(LEAST_RATIO, (squares / mean + WORTH_WEEKS) / (len(weeks) - 1 + WORTH_WEEKS))
