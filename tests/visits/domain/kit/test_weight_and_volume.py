"""Grams are millilitres times grams per millilitre."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from visits.domain.kit.stock_kinds import Unit
from visits.domain.kit.weight_and_volume import in_unit

D = Decimal


@pytest.mark.parametrize(
    ("quantity", "typed", "counted", "density", "answer"),
    [
        ("48", Unit.GRAM, Unit.ML, "1.2", "40.00"),
        ("40", Unit.ML, Unit.GRAM, "1.2", "48.00"),
        ("10", Unit.GRAM, Unit.ML, "3", "3.33"),
        ("2", Unit.GRAM, Unit.ML, "3", "0.67"),
        ("7.005", Unit.ML, Unit.ML, None, "7.01"),
        ("2", Unit.PAIR, Unit.PAIR, "1.2", "2.00"),
    ],
)
def test_one_in_the_other(quantity, typed, counted, density, answer):
    assert in_unit(D(quantity), typed, counted, D(density) if density else None) == D(answer)


@pytest.mark.parametrize(
    ("typed", "counted", "density"),
    [
        (Unit.GRAM, Unit.ML, None),
        (Unit.EACH, Unit.ML, D(1)),
        (Unit.GRAM, Unit.PAIR, D(1)),
        (Unit.EACH, Unit.PAIR, D(1)),
    ],
)
def test_where_there_is_no_way_there_is_no_answer(typed, counted, density):
    assert in_unit(D(1), typed, counted, density) is None


@given(st.decimals("1", "9999", places=2), st.decimals("0.1", "20", places=3))
def test_there_and_back_is_the_same_but_for_the_last_figure(quantity, density):
    grams = in_unit(quantity, Unit.ML, Unit.GRAM, density)
    assert grams is not None
    again = in_unit(grams, Unit.GRAM, Unit.ML, density)
    assert again is not None
    assert abs(again - quantity) <= D("0.005") / density + D("0.005")
