"""The miles driven in a period, each drive with its allowance."""

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from invoicing.documents.book_content import DriveRow
from invoicing.domain.mileage_allowance import (
    AllowanceRate,
    Allowed,
    Driven,
    allowances,
    converted,
    rate_on,
    year_start,
)
from invoicing.domain.minor_units import minor_digits
from invoicing.domain.tax_periods import Period
from invoicing.domain.travel_charge import DistanceUnit
from invoicing.models import Journey, MileageRate
from invoicing.selectors.money_rules import money_rules
from trimops.accounts.models import Business
from trimops.kernel.money import round_money
from trimops.kernel.scope import Scope

ZERO = Decimal(0)


@dataclass(frozen=True)
class MileageLog:
    """The drives of a period; `before` is what was driven in the allowance year before it; both in `unit`."""

    drives: list[DriveRow]
    unit: DistanceUnit
    distance: Decimal
    amount: Decimal
    before: Decimal
    rate: AllowanceRate | None

    @property
    def without_rate(self) -> int:
        """Drives on days for which no allowance was put down."""
        return sum(drive.allowed.rate is None for drive in self.drives)


def mileage_log(business: Business, period: Period) -> MileageLog:
    """Reckoned from the first day of the allowance year, so that the limit is met where it was. Three queries."""
    scope = Scope(business.pk)
    unit = DistanceUnit(money_rules(scope).distance_unit)
    rates = allowance_rates(scope)
    first = _first_day(period.first, rates)
    rows = Journey.objects.within(scope).filter(on__gte=first, on__lte=period.last)
    journeys = list(rows.select_related("van").order_by("on", "van_id", "position", "id"))
    driven = [Driven(row.on, row.distance, DistanceUnit(row.unit)) for row in journeys]
    allowed = allowances(driven, rates, minor_digits(business.currency))
    logged = [_row(*parts, unit) for parts in zip(journeys, driven, allowed, strict=True)]
    inside = [drive for drive in logged if drive.on >= period.first]
    return MileageLog(
        inside,
        unit,
        sum((drive.distance for drive in inside), ZERO),
        sum((drive.allowed.amount for drive in inside), ZERO),
        sum((drive.distance for drive in logged if drive.on < period.first), ZERO),
        rate_on(period.last, rates),
    )


def allowance_rates(scope: Scope) -> list[AllowanceRate]:
    """The rates of the business, by the day from which they hold."""
    rows = MileageRate.objects.within(scope).order_by("valid_from")
    return [
        AllowanceRate(
            row.valid_from,
            DistanceUnit(row.unit),
            row.first_rate,
            None if row.up_to is None else Decimal(row.up_to),
            row.then_rate,
            (row.year_begins_month, row.year_begins_day),
        )
        for row in rows
    ]


def _row(journey: Journey, driven: Driven, allowed: Allowed, unit: DistanceUnit) -> DriveRow:
    def told(distance: Decimal) -> Decimal:
        return round_money(converted(distance, driven.unit, unit), 1)

    return DriveRow(
        journey.pk,
        journey.on,
        journey.van.name if journey.van else "",
        journey.from_words,
        journey.to_words,
        journey.purpose,
        told(journey.distance),
        journey.source,
        None if journey.reckoned is None else told(journey.reckoned),
        journey.mended_because,
        journey.is_by_hand,
        allowed,
    )


def _first_day(day: date, rates: list[AllowanceRate]) -> date:
    """Where counting begins: the start of the allowance year that `day` is in."""
    rate = rate_on(day, rates)
    return year_start(day, rate.begins) if rate else day
