"""The prices, tax rates, agreements and rules that held for a farm on a day."""

from datetime import date

from farms.models import Farm
from invoicing.domain.agreed_prices import Agreed, AgreementKind
from invoicing.domain.out_of_hours import UsualHours
from invoicing.domain.price_book import PriceBook, Tax
from invoicing.domain.price_steps import PriceStep, StepRule
from invoicing.domain.pricing import NoPrice, PriceItem
from invoicing.domain.travel_charge import Band, DistanceUnit, TravelRule, TravelTerms
from invoicing.models import Agreement, FarmTerms, Price, PriceList, TaxRate, TravelBand
from invoicing.selectors.farm_terms import farm_terms
from trimops.kernel.scope import Scope
from trimops.paper.days import day_plain


def price_book(
    scope: Scope, farm: Farm, day: date, digits: int = 2, terms: FarmTerms | None = None
) -> PriceBook:
    """What holds on `day`, the day of the work. NoPrice when no price list or tax rate held. 5 or 6 queries.

    `terms` of the farm where they were read already: one query less.
    """
    held = PriceList.objects.within(scope).held_on(day).first()
    if held is None:
        raise NoPrice(f"No price list holds on {day_plain(day)}: make one that begins by then.")
    prices = list(Price.objects.within(scope).filter(price_list=held))
    return PriceBook(
        prices=_steps(prices),
        taxes=_taxes(scope, terms or farm_terms(farm), day, prices),
        step_rule=StepRule(held.step_rule),
        travel=_travel(scope, held),
        hours=UsualHours(held.usual_from, held.usual_until, held.usual_weekdays),
        minimum=held.minimum_charge,
        guarantee_days=held.guarantee_days,
        agreed=agreed_on(scope, farm, day),
        digits=digits,
    )


def rates_held(scope: Scope, day: date) -> dict[str, TaxRate]:
    """The tax rate of each code that holds on `day`."""
    rows = TaxRate.objects.within(scope).filter(valid_from__lte=day).order_by("valid_from")
    return {row.code: row for row in rows}


def agreed_on(scope: Scope, farm: Farm, day: date) -> tuple[Agreed, ...]:
    """What was agreed with the farm and holds on `day`, the older first."""
    rows = Agreement.objects.within(scope).held_on(day).filter(farm=farm).order_by("valid_from", "id")
    return tuple(
        Agreed(
            AgreementKind(row.kind),
            row.amount,
            row.why,
            row.valid_from,
            PriceItem(row.item) if row.item else None,
        )
        for row in rows
    )


def _steps(prices: list[Price]) -> dict[PriceItem, tuple[PriceStep, ...]]:
    found: dict[PriceItem, tuple[PriceStep, ...]] = {}
    for row in prices:
        item = PriceItem(row.item)
        found[item] = (*found.get(item, ()), PriceStep(row.from_quantity, row.unit_price))
    return found


def _taxes(scope: Scope, terms: FarmTerms, day: date, prices: list[Price]) -> dict[PriceItem, Tax]:
    """By item; a farm with a tax of its own has that one for everything."""
    rates = rates_held(scope, day)
    return {PriceItem(row.item): _tax(terms.tax_code or row.tax_code, rates, day) for row in prices}


def _tax(code: str, rates: dict[str, TaxRate], day: date) -> Tax:
    rate = rates.get(code)
    if rate is None:
        raise NoPrice(f"No tax rate “{code}” holds on {day_plain(day)}: add it.")
    return Tax(rate.category, rate.percent, rate.reason, rate.reason_code)


def _travel(scope: Scope, held: PriceList) -> TravelTerms:
    rule = TravelRule(held.travel_rule)
    rows = TravelBand.objects.within(scope).filter(price_list=held) if rule is TravelRule.BAND else ()
    bands = tuple(Band(row.up_to, row.price) for row in rows)
    return TravelTerms(rule, DistanceUnit(held.travel_unit), bands)
