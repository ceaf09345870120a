"""The demo's price lists (last year's and this year's) and its tax rate."""

from datetime import date, time
from decimal import Decimal

from invoicing.domain.travel_charge import TravelRule
from invoicing.models import Price, PriceList, TaxRate
from trimops.accounts.models import Business
from trimops.kernel.money import round_money
from trimops.kernel.scope import Scope
from trimops.portal.demo.demo_people import Kit
from trimops.portal.demo.keep_money import money_sketch


def build_prices(business: Business, kit: Kit, first: date, today: date) -> None:
    """Prices from the first day of the history, raised on the first of January."""
    TaxRate.objects.bulk_create(
        [
            TaxRate(
                business=business,
                code=kit.tax["code"],
                category=kit.tax["category"],
                percent=Decimal(kit.tax["percent"]),
                valid_from=first,
            )
        ]
    )
    _price_list(business, kit, "First prices", first, kit.earlier_share)
    _price_list(business, kit, f"Prices {today.year}", max(first, date(today.year, 1, 1)), Decimal(1))


def _price_list(business: Business, kit: Kit, name: str, valid_from: date, share: Decimal) -> None:
    if PriceList.objects.within(Scope(business.pk)).filter(valid_from=valid_from).exists():
        return
    price_list = PriceList(business=business, name=name, valid_from=valid_from)
    price_list.travel_rule, price_list.guarantee_days = (
        TravelRule.DISTANCE.value,
        money_sketch()["guarantee_days"],
    )
    price_list.usual_from, price_list.usual_until = time(6), time(19)
    price_list.full_clean()
    price_list.save()
    Price.objects.bulk_create(
        [
            Price(
                business=business,
                price_list=price_list,
                item=item,
                unit_price=round_money(price * share),
                tax_code=kit.tax["code"],
            )
            for item, price in kit.prices.items()
        ]
    )
