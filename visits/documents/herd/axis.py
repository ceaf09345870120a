"""Scales of the herd pictures: where a figure or a day lies, and which ticks are written."""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from trimops.paper.days import day_short_year
from visits.documents.herd_story_content import Reading

_STEPS = (1.0, 2.0, 2.5, 5.0, 10.0)
_MONTHS_APART = (1, 2, 3, 6, 12, 24, 60, 120)
_WIDEST_TO_HIGHEST = 3.0
_WHOLE = 9.95


@dataclass(frozen=True)
class Scale:
    """Values from `low` to `high` laid out from `start` to `end` mm (`end` may be the smaller one)."""

    low: float
    high: float
    start: float
    end: float

    def at(self, value: float) -> float:
        """Where the value lies; a value beyond the scale lies at its edge."""
        held = min(max(value, self.low), self.high)
        return self.start + (self.end - self.start) * (held - self.low) / (self.high - self.low)

    def goes_on(self, value: float) -> bool:
        """Whether the value lies beyond the upper edge."""
        return value > self.high * (1 + 1e-9)


def top_of(readings: Iterable[Reading]) -> float:
    """How far an axis from 0 must reach: to every figure, and to the ends of the intervals as long as these are not
    more than three times the highest figure. So one cow seen once does not flatten all the rest."""
    known = list(readings)
    highest = max((reading.value for reading in known), default=0.0)
    widest = max((reading.high or 0.0 for reading in known), default=0.0)
    return max(highest, min(widest, _WIDEST_TO_HIGHEST * highest) if highest else widest) or 1.0


def ticks(top: float, most: int = 4) -> tuple[float, ...]:
    """Round figures from 0 up to the first that is not below `top`, with at most `most` steps between."""
    least = top / most
    power = 10.0 ** math.floor(math.log10(least))
    step = next(power * part for part in _STEPS if power * part >= least * (1 - 1e-9))
    return tuple(round(step * i, 9) for i in range(math.ceil(top / step - 1e-9) + 1))


def figure(value: float) -> str:
    """ "14", "9.5", "0.4", "0": a decimal below ten, none above."""
    if value >= _WHOLE:
        return f"{value:,.0f}"
    return f"{value:.1f}".removesuffix(".0")


def tick_words(value: float) -> str:
    """A tick without idle zeros: "20", "2.5"."""
    return f"{value:,.4f}".rstrip("0").rstrip(".")


def interval_words(reading: Reading) -> str:
    """ "14 (9 to 21)"; the figure alone where no interval is known."""
    if reading.low is None or reading.high is None:
        return figure(reading.value)
    if reading.value >= _WHOLE:
        return f"{reading.value:,.0f} ({reading.low:,.0f} to {reading.high:,.0f})"
    return f"{figure(reading.value)} ({figure(reading.low)} to {figure(reading.high)})"


def month(day: date) -> str:
    """ "Mar 2026" """
    return day_short_year(day).split(" ", 1)[1]


def month_ticks(first: date, last: date, most: int) -> tuple[tuple[date, str], ...]:
    """Firsts of months between two days (both counted), at most `most`; of whole years, whose words are short, half
    as many again."""
    for apart in _MONTHS_APART:
        days = list(_firsts(first, last, apart))
        if len(days) <= (most if apart < 12 else most * 3 // 2):
            return tuple((day, str(day.year) if apart >= 12 else month(day)) for day in days)
    return ()


def _firsts(first: date, last: date, apart: int) -> Iterable[date]:
    index = first.year * 12 + first.month - 1
    index += -index % apart
    while (day := date(index // 12, index % 12 + 1, 1)) <= last:
        if day >= first:
            yield day
        index += apart
