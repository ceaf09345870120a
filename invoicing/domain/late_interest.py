"""Interest on a debt paid late, and the fixed sum that may be claimed besides. Rates, margin and days are data.

Formula: for each stretch of days on which amount and rate stay the same,

    interest = open amount x (reference rate + margin) / 100 x days / days of the year

It is simple interest; the first day is the one after the due day, the last the day of reckoning. The stretches are
added up exactly and rounded once, at the end. Rounding the sum of one day first gives less: 1,000.00 at 8.5 % over 50
days is 11.64 here, and 11.50 with 0.23 a day (checkdata `uk-late-interest`). Which one a court takes, ask your
accountant.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from decimal import Decimal
from enum import StrEnum
from itertools import groupby, pairwise

from trimops.kernel.errors import RuleBroken
from trimops.kernel.money import round_money

ZERO = Decimal(0)
DAY = timedelta(days=1)
MIDDLE_OF_YEAR = 7


class NoReferenceRate(RuleBroken):
    """Interest is asked for days on which no reference rate is known."""

    code = "no_reference_rate"


class RateRule(StrEnum):
    """Which day's reference rate holds on a day that is late.

    `AT_THE_START` is how the United Kingdom's Late Payment of Commercial Debts (Rate of Interest) Order 2002 fixes it,
    `FIRST_OF_HALF` how directive 2011/7/EU does (both from memory: ask your accountant).
    """

    EACH_DAY = "each_day"
    LAST_HALF = "last_half"
    FIRST_OF_HALF = "first_of_half"
    AT_THE_START = "at_the_start"

    @property
    def label(self) -> str:
        return _RULES[self]


_RULES = {
    RateRule.EACH_DAY: "The rate of each day, as it changes",
    RateRule.LAST_HALF: "For each half-year, the rate of 30 June or 31 December before it",
    RateRule.FIRST_OF_HALF: "For each half-year, the rate of 1 January or 1 July",
    RateRule.AT_THE_START: "The rate of 30 June or 31 December before interest began, to the end",
}


@dataclass(frozen=True)
class RateFrom:
    """The reference rate in percent a year, from a day on."""

    valid_from: date
    percent: Decimal


@dataclass(frozen=True)
class PaidPart:
    """What the debt was lessened by (money, a credit note), counted from that day on."""

    on: date
    amount: Decimal


@dataclass(frozen=True)
class InterestTerms:
    """How interest is charged: points above the reference rate, the days of a year, which rate holds."""

    margin: Decimal
    days_in_year: int = 365
    rule: RateRule = RateRule.LAST_HALF
    rates: tuple[RateFrom, ...] = ()


@dataclass(frozen=True)
class Stretch:
    """`days` from `first` to `last`, both counted; `interest` is exact. `percent` holds the margin."""

    first: date
    last: date
    days: int
    base: Decimal
    percent: Decimal
    interest: Decimal


def interest_stretches(
    amount: Decimal, due_on: date, parts: Sequence[PaidPart], terms: InterestTerms, upto: date
) -> tuple[Stretch, ...]:
    """From the day after `due_on` to `upto`; none when that is not late, or on days when nothing was open."""
    start, end = due_on + DAY, upto + DAY
    if start >= end:
        return ()
    turns = sorted({start, end, *(day for day in _turns(parts, terms, start) if start < day < end)})
    found = (_stretch(amount, parts, terms, start, span) for span in pairwise(turns))
    return tuple(_joined([stretch for stretch in found if stretch]))


def interest_total(stretches: Sequence[Stretch], digits: int = 2) -> Decimal:
    """The exact interest of all stretches, rounded once."""
    return round_money(sum((stretch.interest for stretch in stretches), ZERO), digits)


def fixed_sum(debt: Decimal, bands: Sequence[tuple[Decimal, Decimal]]) -> Decimal:
    """What is claimed once for a debt: the sum of the highest band (from this debt, this sum) that it reaches."""
    reached = [band for band in bands if debt >= band[0]]
    return max(reached)[1] if reached else ZERO


def reference_rate(day: date, began: date, terms: InterestTerms) -> Decimal:
    """The reference rate for interest on `day` of a debt late since `began`. NoReferenceRate says which is missing."""
    wanted = _day_of_rate(day, began, terms.rule)
    known = [rate for rate in terms.rates if rate.valid_from <= wanted]
    if not known:
        raise NoReferenceRate(f"No reference rate is known for {wanted:%-d %B %Y}: put it down first.")
    return max(known, key=lambda rate: rate.valid_from).percent


def _stretch(
    amount: Decimal, parts: Sequence[PaidPart], terms: InterestTerms, began: date, span: tuple[date, date]
) -> Stretch | None:
    first, end = span
    base = amount - sum((part.amount for part in parts if part.on <= first), ZERO)
    if base <= 0:
        return None
    days = (end - first).days
    percent = reference_rate(first, began, terms) + terms.margin
    interest = base * percent * days / (100 * terms.days_in_year)
    return Stretch(first, end - DAY, days, base, percent, interest)


def _joined(stretches: Sequence[Stretch]) -> Iterator[Stretch]:
    """Neighbours with the same amount and rate as one."""
    for _, group in groupby(stretches, key=lambda stretch: (stretch.base, stretch.percent)):
        same = list(group)
        days, interest = sum(s.days for s in same), sum((s.interest for s in same), ZERO)
        yield replace(same[0], last=same[-1].last, days=days, interest=interest)


def _turns(parts: Sequence[PaidPart], terms: InterestTerms, start: date) -> Iterator[date]:
    """Days on which the amount or the rate may change."""
    yield from (part.on for part in parts)
    if terms.rule is RateRule.EACH_DAY:
        yield from (rate.valid_from for rate in terms.rates)
    elif terms.rule is not RateRule.AT_THE_START:
        last = max((rate.valid_from for rate in terms.rates), default=start)
        years = range(start.year, last.year + 2)
        yield from (date(year, month, 1) for year in years for month in (1, MIDDLE_OF_YEAR))


def _day_of_rate(day: date, began: date, rule: RateRule) -> date:
    if rule is RateRule.EACH_DAY:
        return day
    half = _first_of_half(began if rule is RateRule.AT_THE_START else day)
    return half if rule is RateRule.FIRST_OF_HALF else half - DAY


def _first_of_half(day: date) -> date:
    return date(day.year, MIDDLE_OF_YEAR if day.month >= MIDDLE_OF_YEAR else 1, 1)
