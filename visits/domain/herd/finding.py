"""A finding on a herd's feet in words: what it says is only written when an interval supports it."""

from dataclasses import dataclass
from datetime import date, timedelta
from enum import StrEnum

from trimops.paper.days import day_plain
from trimops.paper.figures import counted
from visits.domain.herd.facts import a_year_before
from visits.domain.herd.intervals import Interval


class FindingKind(StrEnum):
    """What a finding tells. `too_few`: cows or time do not suffice; `picked`: only part of the herd was seen."""

    BETTER = "better"
    WORSE = "worse"
    PLAIN = "plain"
    STEADY = "steady"
    TOO_FEW = "too_few"
    PICKED = "picked"

    @property
    def tells(self) -> bool:
        """Whether it says something that the numbers support."""
        return self in (FindingKind.BETTER, FindingKind.WORSE, FindingKind.PLAIN)


@dataclass(frozen=True)
class Finding:
    """One sentence on one picture. `basis` says what it rests on; `short` is its core for a headline, if it has one."""

    title: str
    sentence: str
    kind: FindingKind
    basis: str = ""
    short: str = ""


@dataclass(frozen=True)
class StoryPeriod:
    """The time that is told of: from `start` on and before `end`. `words` go into a sentence: "in 2026"."""

    start: date
    end: date
    words: str

    @property
    def before(self) -> "StoryPeriod":
        """The same length of time right before it: the same seasons when it is a year."""
        return StoryPeriod(a_year_before(self.start), a_year_before(self.end), "the year before")


def year_up_to(today: date) -> StoryPeriod:
    """The twelve months up to and with `today`."""
    end = today + timedelta(days=1)
    return StoryPeriod(a_year_before(end), end, f"in the year up to {day_plain(today)}")


def calendar_year(year: int, today: date) -> StoryPeriod:
    """That year, or as much of it as has gone by."""
    end = min(date(year + 1, 1, 1), today + timedelta(days=1))
    is_whole = end == date(year + 1, 1, 1)
    words = f"in {year}" if is_whole else f"in {year} up to {day_plain(today)}"
    return StoryPeriod(date(year, 1, 1), end, words)


def of_seen(cows: int, seen: int, herd: int) -> str:
    """ "31 of 66 cows seen (of a herd of 68)" """
    return f"{cows} of {counted(seen, 'cow')} seen" + (f" (of a herd of {herd:,})" if herd else "")


def figure(value: float) -> str:
    """A figure with no more digits than it can bear: "47", "7.4" """
    return f"{value:.0f}" if value >= 10 or round(value, 1) == round(value) else f"{value:.1f}"


def between(interval: Interval) -> str:
    """ "35 to 59" """
    return f"{figure(interval.low)} to {figure(interval.high)}"
