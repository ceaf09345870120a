"""Prices from a day on: a list of its own, which stays as it is once it was billed on."""

from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal

from django.db import transaction

from invoicing.domain.out_of_hours import UsualHours
from invoicing.domain.price_steps import PriceStep, StepRule
from invoicing.domain.pricing import PriceItem
from invoicing.domain.travel_charge import TravelRule, TravelTerms
from invoicing.domain.travel_lines import distance_item
from invoicing.models import Price, PriceList, TravelBand
from invoicing.selectors.billed_on import prices_are_billed_on
from invoicing.selectors.price_book import rates_held
from invoicing.services.lock_period import refuse_locked
from trimops.accounts.models import Business
from trimops.kernel.errors import RuleBroken
from trimops.kernel.scope import Scope


class PricesBilledOn(RuleBroken):
    """Work has been billed at this list."""

    code = "prices_billed_on"


class ListBeginsThen(RuleBroken):
    """Two lists would begin on one day."""

    code = "list_begins_then"


class TaxRateUnknown(RuleBroken):
    """No rate of that code holds when the list begins."""

    code = "tax_rate_unknown"


class TravelPriceMissing(RuleBroken):
    """The rule for travel lacks the price or the bands that it goes by."""

    code = "travel_price_missing"


@dataclass(frozen=True)
class ItemPrice:
    """One item with its steps, the first from 1 on, and the code of its tax."""

    item: PriceItem
    steps: tuple[PriceStep, ...]
    tax_code: str


@dataclass(frozen=True)
class PriceSheet:
    """A whole price list, without tax, as it is to hold from `valid_from` on."""

    name: str
    valid_from: date
    prices: tuple[ItemPrice, ...]
    step_rule: StepRule = StepRule.WHOLE
    travel: TravelTerms = field(default_factory=TravelTerms)
    minimum: Decimal = Decimal(0)
    guarantee_days: int = 0
    hours: UsualHours = field(default_factory=UsualHours)


@transaction.atomic
def set_prices(*, business: Business, sheet: PriceSheet, instead_of: PriceList | None = None) -> PriceList:
    """A new list, or `instead_of` rewritten. Other days keep their lists.

    PricesBilledOn when work was billed at `instead_of`; PeriodLocked where either begins in a closed period;
    ListBeginsThen, TaxRateUnknown and TravelPriceMissing as their sentences say.
    """
    scope = Scope(business.pk)
    refuse_locked(scope=scope, day=sheet.valid_from, what="The list's first day")
    row = _row_to_write(business, instead_of)
    _refuse_twice(scope, sheet, row)
    _refuse_unknown_tax(scope, sheet)
    _refuse_travel_without_price(sheet)
    _fill(row, sheet)
    row.full_clean()
    row.save()
    _store_prices(row, sheet)
    _store_bands(row, sheet)
    return row


def _row_to_write(business: Business, instead_of: PriceList | None) -> PriceList:
    if instead_of is None:
        return PriceList(business=business)
    row = instead_of.locked()
    refuse_locked(scope=row.scope, day=row.valid_from, what="The list's first day")
    if prices_are_billed_on(row):
        raise PricesBilledOn(
            f"Work is billed at “{row.name}”: it stays as it is. Make a new list from a later day."
        )
    return row


def _refuse_twice(scope: Scope, sheet: PriceSheet, row: PriceList) -> None:
    others = PriceList.objects.within(scope).filter(valid_from=sheet.valid_from).exclude(pk=row.pk or 0)
    known = others.first()
    if known is not None:
        raise ListBeginsThen(f"“{known.name}” begins on that day already: mend it, or choose another day.")


def _refuse_unknown_tax(scope: Scope, sheet: PriceSheet) -> None:
    known, first = rates_held(scope, sheet.valid_from), f"{sheet.valid_from:%-d %B %Y}"
    for price in sheet.prices:
        if price.tax_code not in known:
            raise TaxRateUnknown(
                f"{price.item.label}: no tax rate “{price.tax_code}” holds on {first}. Add it first."
            )


def _refuse_travel_without_price(sheet: PriceSheet) -> None:
    rule = sheet.travel.rule
    needed = distance_item(sheet.travel.unit)
    if rule in (TravelRule.DISTANCE, TravelRule.SHARED) and needed not in {p.item for p in sheet.prices}:
        raise TravelPriceMissing(f"Travel is charged by the {sheet.travel.unit.label}: give its price.")
    if rule is TravelRule.BAND and not sheet.travel.bands:
        raise TravelPriceMissing("Travel is charged by band: give at least one.")


def _fill(row: PriceList, sheet: PriceSheet) -> None:
    row.name, row.valid_from, row.step_rule = sheet.name, sheet.valid_from, sheet.step_rule.value
    row.travel_rule, row.travel_unit = sheet.travel.rule.value, sheet.travel.unit.value
    row.minimum_charge, row.guarantee_days = sheet.minimum, sheet.guarantee_days
    row.usual_from, row.usual_until = sheet.hours.start, sheet.hours.end
    row.usual_weekdays = sheet.hours.weekdays


def _store_prices(row: PriceList, sheet: PriceSheet) -> None:
    Price.objects.within(row.scope).filter(price_list=row).delete()
    for told in sheet.prices:
        for step in told.steps:
            price = Price(
                business_id=row.business_id,
                price_list=row,
                item=told.item.value,
                from_quantity=step.from_quantity,
                unit_price=step.unit_price,
                tax_code=told.tax_code,
            )
            price.full_clean()
            price.save()


def _store_bands(row: PriceList, sheet: PriceSheet) -> None:
    TravelBand.objects.within(row.scope).filter(price_list=row).delete()
    for told in sheet.travel.bands:
        band = TravelBand(business_id=row.business_id, price_list=row, up_to=told.up_to, price=told.price)
        band.full_clean()
        band.save()
