import pytest

from invoicing.models import FarmTerms, TaxRate
from invoicing.services.drop_tax_rate import RateInUse, drop_tax_rate
from invoicing.services.set_prices import set_prices
from tests.invoicing.services.price_sheets import JUNE, rate, sheet


def test_a_rate_that_nothing_names_goes(house):
    drop_tax_rate(rate=rate(house.business))
    assert not TaxRate.objects.within(house.scope).exists()


def test_the_last_rate_of_a_code_in_use_stays(house):
    first, second = rate(house.business), rate(house.business, since=JUNE)
    other = rate(house.business, "reverse", "0", category="AE", reason="Reverse charge")
    set_prices(business=house.business, sheet=sheet())
    FarmTerms.objects.create(business=house.business, farm=house.farm, tax_code="reverse")
    drop_tax_rate(rate=second)
    for row in (first, other):
        with pytest.raises(RateInUse):
            drop_tax_rate(rate=row)
