"""The prices and tax rates that held on a day."""

from datetime import date

from invoicing.domain.pricing import NoPrice, PricedItem, PriceItem
from invoicing.models import Price, PriceList, TaxRate
from trimops.kernel.scope import Scope


def prices_held(scope: Scope, day: date) -> dict[PriceItem, PricedItem]:
    """Price by item on `day`, the day of the work. NoPrice when no list or no tax rate held then."""
    price_list = PriceList.objects.within(scope).held_on(day).first()
    if price_list is None:
        raise NoPrice(f"No price list holds on {day:%d %B %Y}: make one that begins by then.")
    rates = _rates_held(scope, day)
    rows = Price.objects.within(scope).filter(price_list=price_list)
    return {PriceItem(row.item): _priced(row, rates, day) for row in rows}


def _rates_held(scope: Scope, day: date) -> dict[str, TaxRate]:
    rows = TaxRate.objects.within(scope).filter(valid_from__lte=day).order_by("valid_from")
    return {row.code: row for row in rows}


def _priced(price: Price, rates: dict[str, TaxRate], day: date) -> PricedItem:
    rate = rates.get(price.tax_code)
    if rate is None:
        raise NoPrice(f"No tax rate “{price.tax_code}” holds on {day:%d %B %Y}: add it.")
    return PricedItem(price.unit_price, rate.category, rate.percent, rate.reason)
