"""Hundredths are exact."""

from decimal import Decimal

import pytest

from visits.domain.kit.hundredths import exact_sum, from_hundredths, in_hundredths


@pytest.mark.parametrize(
    ("amount", "count"),
    [("12.34", 1234), ("0", 0), ("-0.05", -5), ("7", 700), ("1E+3", 100_000), ("12.340", 1234)],
)
def test_an_amount_is_so_many_hundredths_and_back(amount, count):
    assert in_hundredths(Decimal(amount)) == count
    assert from_hundredths(count) == Decimal(amount)


def test_what_comes_back_has_two_places():
    assert str(from_hundredths(700)) == "7.00"


def test_a_third_place_is_no_hundredth():
    with pytest.raises(ValueError, match="more than two places"):
        in_hundredths(Decimal("0.005"))


@pytest.mark.parametrize(
    ("summed", "exact"), [(None, "0"), (Decimal("12.2999999999"), "12.30"), (Decimal(-3), "-3.00")]
)
def test_what_floats_summed_up_is_made_exact(summed, exact):
    assert exact_sum(summed) == Decimal(exact)
