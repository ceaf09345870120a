from datetime import date
from decimal import Decimal

import pytest

from invoicing.domain.pricing import PriceItem
from invoicing.selectors.prices_held import prices_held
from invoicing.services.set_prices import Tariff, TaxReasonMissing, set_prices
from tests.factories import make_house

pytestmark = pytest.mark.django_db
MARCH, JUNE = date(2026, 3, 1), date(2026, 6, 1)


@pytest.fixture
def house():
    return make_house()


def tariff(valid_from, price, **changes):
    words = {"tax_category": "S", "tax_percent": Decimal(20)}
    return Tariff(valid_from, {PriceItem.FUNCTIONAL: Decimal(price)}, **{**words, **changes})


def held(house, day):
    return prices_held(house.scope, day)[PriceItem.FUNCTIONAL]


def test_the_price_of_the_day_of_the_work_holds(house):
    set_prices(business=house.business, tariff=tariff(MARCH, "12.00"))
    set_prices(business=house.business, tariff=tariff(JUNE, "13.50", tax_percent=Decimal(19)))
    assert held(house, date(2026, 5, 31)).unit_price == Decimal("12.00")
    assert held(house, date(2026, 5, 31)).tax_percent == 20
    assert held(house, JUNE).unit_price == Decimal("13.50")
    assert held(house, JUNE).tax_percent == 19


def test_a_list_that_begins_on_the_same_day_is_replaced(house):
    set_prices(business=house.business, tariff=tariff(MARCH, "12.00"))
    set_prices(business=house.business, tariff=tariff(MARCH, "12.50"))
    assert held(house, MARCH).unit_price == Decimal("12.50")


def test_no_tax_without_a_reason_is_refused(house):
    with pytest.raises(TaxReasonMissing):
        set_prices(
            business=house.business, tariff=tariff(MARCH, "12.00", tax_category="E", tax_percent=Decimal(0))
        )
