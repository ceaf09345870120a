from decimal import Decimal as D

import pytest

from invoicing.templatetags.prices import price, signed


@pytest.mark.parametrize(
    ("amount", "currency", "words"),
    [
        ("12.5000", "GBP", "£12.50"),
        ("0.4550", "EUR", "€0.455"),
        ("1200.0000", "JPY", "JPY\N{NO-BREAK SPACE}1200"),
        ("3.5", "KWD", "KWD\N{NO-BREAK SPACE}3.500"),
    ],
)
def test_prices_keep_the_decimals_they_have(amount, currency, words):
    assert price(D(amount), currency) == words
    assert price(None, currency) == "–"


def test_changes_have_a_sign():
    assert (signed(D("8.7")), signed(D("-3.2"))) == ("+8.7", "\N{MINUS SIGN}3.2")
