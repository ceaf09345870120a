import pytest

from farms.models import Payer
from farms.services.refuse_erased import FarmIsErased
from invoicing.models import FarmTerms
from invoicing.selectors.farm_terms import farm_terms
from invoicing.services.save_farm_terms import TaxCodeUnknown, save_farm_terms
from tests.factories import NOON
from tests.invoicing.services.price_sheets import rate


def save(house, country="", **changes):
    terms = farm_terms(house.farm)
    for name, value in changes.items():
        setattr(terms, name, value)
    return save_farm_terms(terms=terms, country=country, at=NOON, by=house.office)


def test_terms_are_kept_once_a_farm(house):
    rate(house.business, "reverse", "0", category="AE", reason="Reverse charge")
    save(house, order_number="PO 7", send_to=["farm@example.invalid"])
    save(house, tax_code="reverse", payment_days=14)
    row = FarmTerms.objects.within(house.scope).get()
    assert (row.order_number, row.tax_code, row.payment_days) == ("PO 7", "reverse", 14)


def test_the_country_is_that_of_who_pays(house):
    save(house, "IE")
    house.farm.refresh_from_db()
    assert house.farm.country == "IE"
    house.farm.payer = Payer.objects.create(business=house.business, name="The Estate")
    house.farm.save()
    save(house, "FR")
    house.farm.refresh_from_db()
    assert house.farm.country == "IE"
    assert Payer.objects.within(house.scope).get().country == "FR"


def test_a_tax_that_is_not_there_is_refused(house):
    with pytest.raises(TaxCodeUnknown):
        save(house, tax_code="unheard")


def test_an_erased_farm_has_none(house):
    house.farm.erased_at = NOON
    house.farm.save()
    with pytest.raises(FarmIsErased):
        save(house)
