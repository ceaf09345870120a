"""The allowance for miles driven for the business: so much up to a yearly distance, then the other rate.

Rates, the distance and the first day of the year are dated data. The distance is counted for the whole business
together, which never claims more than counting each van for itself; where each may count alone, ask your accountant.
"""

from calendar import monthrange
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from invoicing.domain.travel_charge import KM_IN_A_MILE, DistanceUnit
from trimops.kernel.money import round_money

ZERO = Decimal(0)
METRES = {DistanceUnit.KILOMETRE: Decimal(1000), DistanceUnit.MILE: KM_IN_A_MILE * 1000}


@dataclass(frozen=True)
class AllowanceRate:
    """From `valid_from` on: `first_rate` a unit up to `up_to` units in the year, then `then_rate`; None: no end.

    The year begins on `begins` (month, day).
    """

    valid_from: date
    unit: DistanceUnit
    first_rate: Decimal
    up_to: Decimal | None = None
    then_rate: Decimal = ZERO
    begins: tuple[int, int] = (1, 1)


@dataclass(frozen=True)
class Driven:
    """One drive: the day, how far, in which unit."""

    on: date
    distance: Decimal
    unit: DistanceUnit


@dataclass(frozen=True)
class Allowed:
    """What one drive brings: the distance at either rate (in the rate's unit), and the amount.

    Amounts are told from the year's running total, rounded, so that those of a year add up to the year's allowance to
    the penny. `rate` None: no rate held on that day, and the amount is nought.
    """

    rate: AllowanceRate | None
    at_first: Decimal = ZERO
    at_then: Decimal = ZERO
    amount: Decimal = ZERO


def converted(distance: Decimal, unit: DistanceUnit, to: DistanceUnit) -> Decimal:
    """The distance in another unit, exact when it is the same."""
    return distance if unit is to else distance * METRES[unit] / METRES[to]


def in_unit(metres: float, unit: DistanceUnit) -> Decimal:
    """Metres as kilometres or miles with one decimal, as a log is kept."""
    return round_money(Decimal(str(metres)) / METRES[unit], 1)


def rate_on(day: date, rates: Sequence[AllowanceRate]) -> AllowanceRate | None:
    """The rate that holds on `day`."""
    known = [rate for rate in rates if rate.valid_from <= day]
    return max(known, key=lambda rate: rate.valid_from, default=None)


def year_start(day: date, begins: tuple[int, int]) -> date:
    """The first day of the year that `day` is in, where years begin on (month, day)."""
    month, first = begins
    starts = (date(year, month, min(first, monthrange(year, month)[1])) for year in (day.year, day.year - 1))
    return next(start for start in starts if start <= day)


def allowances(drives: Sequence[Driven], rates: Sequence[AllowanceRate], digits: int = 2) -> list[Allowed]:
    """What each drive brings, in the order given, which is that of the days. Hand in the year from its first day."""
    return list(_allowances(drives, rates, digits))


def _allowances(drives: Sequence[Driven], rates: Sequence[AllowanceRate], digits: int) -> Iterator[Allowed]:
    year: date | None = None
    metres, exact = ZERO, ZERO
    for drive in drives:
        rate = rate_on(drive.on, rates)
        if rate is None:
            yield Allowed(None)
            continue
        if (start := year_start(drive.on, rate.begins)) != year:
            year, metres, exact = start, ZERO, ZERO
        at_first, at_then = _parts(drive, rate, metres)
        before, exact = exact, exact + at_first * rate.first_rate + at_then * rate.then_rate
        metres += drive.distance * METRES[drive.unit]
        yield Allowed(rate, at_first, at_then, round_money(exact, digits) - round_money(before, digits))


def _parts(drive: Driven, rate: AllowanceRate, driven_metres: Decimal) -> tuple[Decimal, Decimal]:
    """The drive's distance at the first rate and at the other."""
    distance = converted(drive.distance, drive.unit, rate.unit)
    if rate.up_to is None:
        return distance, ZERO
    left = max(ZERO, rate.up_to - driven_metres / METRES[rate.unit])
    at_first = min(distance, left)
    return at_first, distance - at_first
