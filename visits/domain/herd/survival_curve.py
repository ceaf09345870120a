"""The Kaplan-Meier curve: the share still free of an event so many days after the start.

Method: product limit of Kaplan and Meier 1958, J Am Stat Assoc 53:457; variance of Greenwood 1926; interval on
the log(-log) scale (Kalbfleisch and Prentice), pointwise. Those who are censored on a day are at risk on that
day, after the events of it. Unit: days; shares 0 to 1. References from memory; held against lifelines and
statsmodels on open data sets (tests/standards/test_survival.py).

Where the curve has come down to 0 the log(-log) interval does not exist (lifelines writes 0 to 0 there): the
upper bound of the step before is kept, since the curve cannot rise again. While it is still at 1 there is no
step, and it does not exist either: a day before the first event is answered with Wilson's interval of those that were
still followed on it, none of which had the event.

When the figure must not be shown: past `followed_until`, the longest time anybody was followed; `at` answers None
there.
"""

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import groupby

from visits.domain.herd.intervals import LEVEL, normal_quantile, wilson

_HALF = 0.5 + 1e-12  # because: five out of ten multiplied day by day may come to a hair over a half


@dataclass(frozen=True)
class Followed:
    """One start, followed for `days`; `has_event` when it ended with the event, else it was censored then."""

    days: float
    has_event: bool


@dataclass(frozen=True)
class SurvivalStep:
    """From `day` on the share is `survival`; `at_risk` just before, `events` on it. Pointwise interval."""

    day: float
    at_risk: int
    events: int
    survival: float
    low: float
    high: float


@dataclass(frozen=True)
class Median:
    """The day by which half had the event. A bound is None where its curve never comes down to half."""

    day: float
    low: float | None
    high: float | None


@dataclass(frozen=True)
class SurvivalCurve:
    """`steps` are the days with an event, in order; `durations` of all that were followed, in order."""

    steps: tuple[SurvivalStep, ...]
    durations: tuple[float, ...]
    level: float = LEVEL

    @property
    def followed_until(self) -> float:
        return self.durations[-1] if self.durations else 0

    @property
    def events(self) -> int:
        return sum(step.events for step in self.steps)

    @property
    def median(self) -> Median | None:
        """None while more than half are still free of it."""
        day = _first_day(self.steps, "survival")
        if day is None:
            return None
        return Median(day, _first_day(self.steps, "low"), _first_day(self.steps, "high"))

    def at(self, day: float) -> SurvivalStep | None:
        """The step that holds on that day, or before the first event one of that day. None past `followed_until`."""
        if not self.durations or day > self.followed_until:
            return None
        before = [step for step in self.steps if step.day <= day]
        if before:
            return before[-1]
        at_risk = self.at_risk(day)
        return SurvivalStep(day, at_risk, 0, 1.0, wilson(at_risk, at_risk, self.level).low, 1.0)

    def at_risk(self, day: float) -> int:
        """How many were still followed on that day, those whose time ended on it included."""
        return sum(duration >= day for duration in self.durations)


def survival_curve(followed: Iterable[Followed], level: float = LEVEL) -> SurvivalCurve:
    """The curve of all that were followed. ValueError for a negative time."""
    in_order = sorted(followed, key=lambda one: one.days)
    if in_order and in_order[0].days < 0:
        raise ValueError(f"followed for {in_order[0].days} days cannot be")
    return SurvivalCurve(tuple(_steps(in_order, level)), tuple(one.days for one in in_order), level)


def _steps(in_order: list[Followed], level: float) -> Iterator[SurvivalStep]:
    at_risk, survival, greenwood, high = len(in_order), 1.0, 0.0, 1.0
    for day, ended in groupby(in_order, key=lambda one: one.days):
        outcomes = [one.has_event for one in ended]
        events = sum(outcomes)
        if events:
            survival *= 1 - events / at_risk
            if at_risk > events:
                greenwood += events / (at_risk * (at_risk - events))
                low, high = _log_log_bounds(survival, greenwood, level)
            else:
                survival, low = 0.0, 0.0
            yield SurvivalStep(day, at_risk, events, survival, low, high)
        at_risk -= len(outcomes)


def _log_log_bounds(survival: float, greenwood: float, level: float) -> tuple[float, float]:
    middle = math.log(-math.log(survival))
    spread = normal_quantile(level) * math.sqrt(greenwood) / math.log(survival)
    return math.exp(-math.exp(middle - spread)), math.exp(-math.exp(middle + spread))


def _first_day(steps: tuple[SurvivalStep, ...], bound: str) -> float | None:
    """The first day on which that curve is at one half or below."""
    return next((step.day for step in steps if getattr(step, bound) <= _HALF), None)
