from datetime import date
from decimal import Decimal as D

import pytest

from invoicing.documents.e_invoice_shape import amount_text, number_text, tidy


@pytest.mark.parametrize(
    ("amount", "digits", "text"),
    [("1234.5", 2, "1234.50"), ("-0.00", 2, "0.00"), ("1E+3", 0, "1000"), ("1234.5000", 2, "1234.50")],
)
def test_an_amount_has_the_decimals_of_its_currency(amount, digits, text):
    assert amount_text(D(amount), digits) == text


@pytest.mark.parametrize(
    ("number", "text"), [("20.00", "20"), ("0.4550", "0.455"), ("-0", "0"), ("1000", "1000")]
)
def test_a_number_has_no_idle_noughts(number, text):
    assert number_text(D(number)) == text


def test_empty_terms_fall_away_and_texts_are_fit_for_xml():
    terms = {
        "a": " x\x0b\ud800y ",
        "b": " \x00",
        "c": date(2026, 1, 1),
        "d": [{"e": ""}, {"e": "0"}],
        "f": {"g": ""},
    }
    assert tidy(terms) == {"a": "x  y", "c": date(2026, 1, 1), "d": [{"e": "0"}]}
