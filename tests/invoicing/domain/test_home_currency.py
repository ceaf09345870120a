from decimal import Decimal as D

import pytest

from invoicing.domain.home_currency import home_currency, tax_at_home


@pytest.mark.parametrize(
    ("country", "currency", "also"),
    [("GB", "EUR", "GBP"), ("GB", "GBP", ""), ("IE", "GBP", "EUR"), ("PL", "EUR", "PLN"), ("JP", "USD", "")],
)
def test_the_tax_is_told_in_the_money_of_the_country_too(country, currency, also):
    assert home_currency(country, currency) == also


def test_it_is_rounded_once_to_what_that_money_has():
    assert tax_at_home(D("13.52"), D("0.8433"), "GBP") == D("11.40")
    assert tax_at_home(D("13.52"), D("400.5"), "HUF") == D("5414.76")
