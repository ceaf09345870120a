from decimal import Decimal as D

import pytest
from hypothesis import given
from hypothesis import strategies as st

from invoicing.domain.read_amount import read_amount


@pytest.mark.parametrize(
    ("typed", "amount"),
    [
        ("12.50", "12.50"),
        ("12,50", "12.50"),
        ("12,5", "12.5"),
        ("1,234.50", "1234.50"),
        ("1.234,50", "1234.50"),
        ("1 234,5", "1234.5"),
        ("1'234.50", "1234.50"),
        ("1,234,567.8", "1234567.8"),
        ("1,234,567", "1234567"),
        ("1.234.567", "1234567"),
        ("0,125", "0.125"),
        ("0.4550", "0.4550"),
        (" 7 ", "7"),
        ("-3,2", "-3.2"),
        (".5", "0.5"),
        ("10000", "10000"),
    ],
)
def test_comma_and_point(typed, amount):
    assert read_amount(typed) == D(amount)


@pytest.mark.parametrize("typed", ["", "-", "twelve", "1e3", "12.3.4", "1,2,3", "£12", "12.50.", "NaN", "١٢"])
def test_what_is_no_number(typed):
    with pytest.raises(ValueError, match="number"):
        read_amount(typed)


def test_what_may_be_a_thousand_or_one_is_asked_back():
    with pytest.raises(ValueError, match=r"1234 or 1\.234"):
        read_amount("1,234")


@given(st.decimals(0, 10**9, places=2))
def test_either_way_of_writing_reads_back(amount):
    assert read_amount(f"{amount:,.2f}") == amount
    assert read_amount(f"{amount:.2f}".replace(".", ",")) == amount
