from decimal import Decimal

import pytest

from trimops.paper.figures import counted, money, plain_amount, quantity, rate


@pytest.mark.parametrize(
    ("amount", "currency", "digits", "words"),
    [
        ("1234.5", "GBP", 2, "£1,234.50"),
        ("-3", "EUR", 2, "−€3.00"),
        ("20", "CHF", 2, "CHF 20.00"),
        ("1500", "JPY", 0, "JPY 1,500"),
        ("0", "GBP", 2, "£0.00"),
    ],
)
def test_money_is_written_with_its_currency(amount, currency, digits, words):
    assert money(Decimal(amount), currency, digits) == words


def test_money_is_never_rounded_on_paper():
    with pytest.raises(ValueError, match="decimals"):
        money(Decimal("1.005"), "GBP")


def test_a_unit_price_keeps_its_further_decimals():
    assert plain_amount(Decimal("0.455")) == "0.455"
    assert plain_amount(Decimal("11.500")) == "11.50"
    assert plain_amount(Decimal("-1200")) == "−1,200.00"


@pytest.mark.parametrize(
    ("value", "words"), [("28", "28"), ("46.50", "46.5"), ("1200", "1,200"), ("1E+3", "1,000")]
)
def test_quantities_have_no_idle_zeros(value, words):
    assert quantity(Decimal(value)) == words


def test_rates_and_counts():
    assert rate(Decimal("5.50")) == "5.5 %"
    assert [counted(0, "cow"), counted(1, "cow"), counted(1200, "cow")] == ["0 cows", "1 cow", "1,200 cows"]
