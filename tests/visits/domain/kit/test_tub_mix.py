"""Concentration arithmetic of trade-facts 5.1: 1:100 in 10 l is 100 ml; 2 % w/v in 10 l is 200 g."""

from decimal import Decimal

from visits.domain.kit.stock_kinds import Unit
from visits.domain.kit.tub_mix import tub_mix


def test_the_two_worked_figures():
    assert tub_mix("1:100", Decimal(10)).words == "100 ml in 10 litres"
    assert tub_mix("2 % w/v", Decimal(10)).words == "200 g in 10 litres"


def test_how_far_the_van_goes():
    assert tub_mix("2 % w/v", Decimal(10), counted_in=Unit.GRAM, in_van=Decimal(1999)).lasts_for == 99
    assert tub_mix("1:3", Decimal(3), counted_in=Unit.ML, in_van=Decimal(1000)).lasts_for == 3


def test_stock_counted_otherwise_or_below_nought_promises_nothing():
    assert tub_mix("2 % w/v", Decimal(10), counted_in=Unit.ML, in_van=Decimal(500)).lasts_for is None
    assert tub_mix("1:100", Decimal(10), counted_in=Unit.ML, in_van=Decimal(-5)).lasts_for == 0


def test_what_cannot_be_read_is_not_guessed():
    assert tub_mix("a good slosh", Decimal(10)) is None
