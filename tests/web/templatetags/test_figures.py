"""Formats are the house's own (look.md); the currency's digits are ISO 4217's."""

from datetime import timedelta
from decimal import Decimal

import pytest

from trimops.web.templatetags.figures import count, how_long, km, money, things


@pytest.mark.parametrize(
    ("amount", "currency", "shown"),
    [
        (Decimal("1234.5"), "GBP", "£1,234.50"),
        (Decimal("0"), "EUR", "€0.00"),
        (Decimal("-48"), "GBP", "−£48.00"),
        (Decimal("13.775"), "GBP", "£13.78"),
        (Decimal("-13.775"), "GBP", "−£13.78"),
        (Decimal("-0.004"), "GBP", "£0.00"),
        (Decimal("1200"), "CHF", "CHF\N{NO-BREAK SPACE}1,200.00"),
        (Decimal("1500.5"), "JPY", "JPY\N{NO-BREAK SPACE}1,501"),
        (7, "", "7.00"),
        (None, "GBP", "–"),
    ],
)
def test_money_is_written_with_its_sign_and_its_digits(amount, currency, shown):
    assert money(amount, currency) == shown


def test_a_float_is_never_money():
    with pytest.raises(TypeError):
        money(1.1, "GBP")


@pytest.mark.parametrize(
    ("value", "shown"),
    [(9000, "9,000"), (63, "63"), (-2, "−2"), (Decimal("12.50"), "12.50"), (None, "–")],
)
def test_counts_are_parted_by_thousands(value, shown):
    assert count(value) == shown


@pytest.mark.parametrize(
    ("metres", "shown"),
    [
        (12430, "12.4 km"),
        (0, "0.0 km"),
        (99_949, "99.9 km"),
        (99_950, "100 km"),
        (148_200, "148 km"),
        (None, "–"),
    ],
)
def test_kilometres_lose_their_decimal_from_a_hundred(metres, shown):
    assert km(metres) == shown


@pytest.mark.parametrize(
    ("value", "shown"),
    [
        (135, "2 h 15 min"),
        (120, "2 h"),
        (40, "40 min"),
        (0, "0 min"),
        (timedelta(hours=1, minutes=59, seconds=31), "2 h"),
        (timedelta(minutes=-75), "−1 h 15 min"),
        (None, "–"),
    ],
)
def test_lengths_of_time_are_hours_and_minutes(value, shown):
    assert how_long(value) == shown


def test_one_thing_is_told_from_many():
    assert [things(n, "cow,cows") for n in (0, 1, 1200)] == ["0 cows", "1 cow", "1,200 cows"]
