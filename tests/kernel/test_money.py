from decimal import Decimal as D

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trimops.kernel.money import round_money

amounts = st.decimals(min_value=-(10**9), max_value=10**9, places=6)


@pytest.mark.parametrize(
    ("amount", "digits", "rounded"),
    [
        ("0.105", 2, "0.11"),
        ("-0.105", 2, "-0.11"),
        ("-13.775", 2, "-13.78"),
        ("2.5", 0, "3"),
        ("1.2345", 3, "1.235"),
        ("7", 2, "7.00"),
    ],
)
def test_halves_go_away_from_zero(amount, digits, rounded):
    assert str(round_money(D(amount), digits)) == rounded


@given(amounts)
def test_rounding_moves_by_at_most_half_a_cent(amount):
    assert abs(round_money(amount) - amount) <= D("0.005")


@given(amounts)
def test_a_credit_is_the_mirror_of_its_charge(amount):
    assert round_money(-amount) == -round_money(amount)


@given(amounts)
def test_rounding_twice_is_rounding_once(amount):
    assert round_money(round_money(amount)) == round_money(amount)
