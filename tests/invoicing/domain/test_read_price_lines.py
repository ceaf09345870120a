from decimal import Decimal as D

import pytest

from invoicing.domain.price_steps import PriceStep
from invoicing.domain.read_price_lines import bands_text, plain_amount, read_bands, read_steps, steps_text
from invoicing.domain.travel_charge import Band

STEPS = (PriceStep(21, D(12)), PriceStep(41, D("10.5")))
BANDS = (Band(D(10), D(8)), Band(D("25.5"), D("15.5")), Band(None, D(40)))


def test_steps_are_read_and_written():
    assert read_steps("21: 12.00; 41: 10,50") == STEPS
    assert read_steps(" 21 :12\n41:10.5 ;") == STEPS
    assert steps_text(STEPS) == "21: 12.00; 41: 10.50"
    assert read_steps("") == ()


def test_bands_are_read_and_written():
    assert read_bands("10: 8.00\n25.5: 15.50\nBeyond: 40") == BANDS
    assert bands_text(BANDS) == "10: 8.00\n25.5: 15.50\nbeyond: 40.00"
    assert read_bands(bands_text(BANDS)) == BANDS


@pytest.mark.parametrize(
    ("typed", "wrong"),
    [
        ("21", "a colon"),
        ("21:", "a colon"),
        ("1: 12", "from 2 on"),
        ("2.5: 12", "from 2 on"),
        ("21: dear", "number"),
        ("21: -1", "from nought"),
        ("21: 1.23456", "four decimals"),
        ("41: 10; 21: 12", "higher"),
        ("21: 10; 21: 12", "higher"),
    ],
)
def test_faulty_steps(typed, wrong):
    with pytest.raises(ValueError, match=wrong):
        read_steps(typed)


@pytest.mark.parametrize(
    ("typed", "wrong"),
    [
        ("beyond: 40\n10: 8", "comes last"),
        ("25: 8\n10: 4", "farther"),
        ("0: 8", "above nought"),
        ("10.25: 8", "a tenth"),
        ("10", "a colon"),
    ],
)
def test_faulty_bands(typed, wrong):
    with pytest.raises(ValueError, match=wrong):
        read_bands(typed)


@pytest.mark.parametrize(
    ("amount", "digits", "words"),
    [
        ("12.5000", 2, "12.50"),
        ("0.4550", 2, "0.455"),
        ("10.0", 0, "10"),
        ("100", 2, "100.00"),
        ("0", 2, "0.00"),
    ],
)
def test_amounts_are_written_short(amount, digits, words):
    assert plain_amount(D(amount), digits) == words
