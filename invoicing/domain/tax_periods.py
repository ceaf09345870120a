"""Periods that books are kept by: months, quarters and years, wherever the business's year begins."""

from dataclasses import dataclass
from datetime import date, timedelta
from enum import StrEnum

from trimops.paper.days import MONTHS, day_short_year


class PeriodKind(StrEnum):
    """How long a period is."""

    MONTH = "month"
    QUARTER = "quarter"
    YEAR = "year"
    FREE = "free"

    @property
    def label(self) -> str:
        return _KINDS[self]


class BookDay(StrEnum):
    """By which of its days an invoice falls into a period."""

    ISSUED = "issued"
    TAX_POINT = "tax_point"

    @property
    def label(self) -> str:
        return {"issued": "The day it was issued", "tax_point": "Its tax point, the day of the work"}[
            self.value
        ]


_KINDS = {
    PeriodKind.MONTH: "One month",
    PeriodKind.QUARTER: "A quarter",
    PeriodKind.YEAR: "A year",
    PeriodKind.FREE: "From one day to another",
}


@dataclass(frozen=True)
class Period:
    """From `first` to `last`, both within; `words` for a page, `slug` for the name of a file."""

    first: date
    last: date
    words: str
    slug: str

    def holds(self, day: date) -> bool:
        return self.first <= day <= self.last


def month_of(day: date) -> Period:
    """The calendar month that holds `day`."""
    first = day.replace(day=1)
    words = f"{MONTHS[first.month - 1]} {first.year}"
    return Period(first, _end(first, 1), words, f"{first:%Y-%m}")


def quarter_of(day: date, year_begins: int = 1) -> Period:
    """The quarter that holds `day`, where the year begins in that month: 2 makes them begin in Feb, May, Aug, Nov."""
    first = _months_on(day.replace(day=1), -((day.month - year_begins) % 3))
    last = _end(first, 3)
    words = f"{_short(first)} to {_short(last)}"
    return Period(first, last, words, f"{first:%Y-%m}_to_{last:%Y-%m}")


def year_of(day: date, year_begins: int = 1) -> Period:
    """The twelve months that hold `day`, beginning in that month."""
    first = _months_on(day.replace(day=1), -((day.month - year_begins) % 12))
    last = _end(first, 12)
    if first.month == 1:
        return Period(first, last, f"{first.year}", f"{first:%Y}")
    return Period(first, last, f"{_short(first)} to {_short(last)}", f"{first:%Y-%m}_to_{last:%Y-%m}")


def free_period(first: date, last: date) -> Period:
    """Any days. ValueError when it ends before it begins."""
    if last < first:
        raise ValueError("The last day is before the first.")
    words = f"{day_short_year(first)} to {day_short_year(last)}" if first != last else day_short_year(first)
    return Period(first, last, words, f"{first:%Y-%m-%d}_to_{last:%Y-%m-%d}")


def period_around(kind: PeriodKind, day: date, year_begins: int = 1) -> Period:
    """The month, quarter or year that holds `day`; of the free kind, the day itself."""
    if kind is PeriodKind.MONTH:
        return month_of(day)
    if kind is PeriodKind.QUARTER:
        return quarter_of(day, year_begins)
    return year_of(day, year_begins) if kind is PeriodKind.YEAR else free_period(day, day)


def _months_on(first: date, months: int) -> date:
    at = first.year * 12 + first.month - 1 + months
    return date(at // 12, at % 12 + 1, 1)


def _end(first: date, months: int) -> date:
    return _months_on(first, months) - timedelta(days=1)


def _short(day: date) -> str:
    return f"{MONTHS[day.month - 1][:3]} {day.year}"
