"""Discounts in percent or as an amount."""

from decimal import Decimal as D

import pytest

from invoicing.domain.discount import Discount, amount_off, discount_words


def test_percent_is_rounded_once_to_the_currency():
    # 5 % of 36.34 is 1.817
    assert amount_off(Discount(percent=D(5)), D("36.34")) == D("1.82")
    assert amount_off(Discount(percent=D(5)), D(36), digits=0) == D(2)


def test_an_amount_is_taken_as_it_is():
    assert amount_off(Discount(amount=D("12.5")), D(20)) == D("12.50")
    assert amount_off(Discount(), D(20)) == 0


@pytest.mark.parametrize(
    "wrong",
    [
        Discount(D(5), D(5)),
        Discount(percent=D(101)),
        Discount(percent=D(-1)),
        Discount(amount=D("20.01")),
        Discount(amount=D(-1)),
        Discount(amount=D("1.005")),
    ],
)
def test_what_makes_no_sense_is_refused(wrong):
    with pytest.raises(ValueError, match=r"[Dd]iscount"):
        amount_off(wrong, D(20))


def test_it_is_told_in_words():
    assert discount_words(Discount(percent=D("5.00"))) == "5 % off"
    assert discount_words(Discount(amount=D("2.50"))) == "2.50 off"
    assert discount_words(Discount()) == "no discount"
