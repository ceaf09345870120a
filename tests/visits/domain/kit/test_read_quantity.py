"""Quantities as people type them."""

from decimal import Decimal

import pytest

from visits.domain.kit.read_quantity import quantity_words, read_quantity, seen_words
from visits.domain.kit.stock_kinds import Unit


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("40", "40"),
        (" 2,5 ", "2.5"),
        ("2.50", "2.50"),
        ("1 200", "1200"),
        ("1\u202f200,5", "1200.5"),
        ("-3", "-3"),
        ("\u22123", "-3"),
        (".5", "0.5"),
        ("0,25", "0.25"),
    ],
)
def test_comma_and_point_are_read(text, found):
    assert read_quantity(text) == Decimal(found)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("1,200", "is that 1200 or 1.200"),
        ("two", "no number"),
        ("1.2.3", "no number"),
        ("1e9", "no number"),
        ("\u0664", "no number"),
        ("NaN", "no number"),
        ("", "no number"),
        ("100000000", "more than can be kept"),
        ("0.125", "more than 2 decimals"),
    ],
)
def test_what_is_unclear_is_said(text, said):
    with pytest.raises(ValueError, match=said):
        read_quantity(text)


def test_a_density_has_three_decimals_and_no_thousands():
    assert read_quantity("1,050", 3) == Decimal("1.05")


@pytest.mark.parametrize(
    ("amount", "unit", "words"),
    [
        ("24", Unit.EACH, "24"),
        ("1.00", Unit.PAIR, "1 pair"),
        ("2.50", Unit.PAIR, "2.5 pairs"),
        ("1600", Unit.ML, "1,600 ml"),
        ("-3", Unit.EACH, "\u22123"),
        ("0", Unit.GRAM, "0 g"),
    ],
)
def test_a_quantity_is_told_with_its_unit(amount, unit, words):
    assert quantity_words(Decimal(amount), unit) == words


@pytest.mark.parametrize(
    ("amount", "unit", "words"),
    [
        ("11.06", Unit.PAIR, "11 pairs"),
        ("3.47", Unit.PAIR, "3 pairs"),
        ("2.5", Unit.PAIR, "2\u00bd pairs"),
        ("0.7", Unit.PAIR, "\u00bd pair"),
        ("1.67", Unit.EACH, "1\u00bd"),
        ("0.2", Unit.EACH, "0"),
        ("-0.2", Unit.EACH, "\u2212\u00bd"),
        ("-2.6", Unit.EACH, "\u22123"),
        ("-2.2", Unit.EACH, "\u22122\u00bd"),
        ("2080.4", Unit.ML, "2,080 ml"),
    ],
)
def test_what_lies_there_is_told_as_one_sees_it(amount, unit, words):
    assert seen_words(Decimal(amount), unit) == words
