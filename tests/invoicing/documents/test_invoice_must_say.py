"""Contents after SI 1995/2518 reg 14(1) and Directive 2006/112/EC art. 226 and 219."""

from dataclasses import replace
from datetime import date
from decimal import Decimal as D

import pytest

from invoicing.documents.invoice_content import Correction, HomeTax, WholeLine
from invoicing.documents.invoice_must_say import missing_words

CORRECTION = Correction("INV-2026-0041", date(2026, 12, 1), "Two cows billed twice.")


def test_a_sound_paper_lacks_nothing(make_invoice):
    assert missing_words(make_invoice()) == []
    assert missing_words(make_invoice(corrects=CORRECTION)) == []


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"invoice_number": " "}, "names the invoice"),
        ({"invoice_number": "INV-2026-0042"}, "names the invoice"),
        ({"invoice_date": date(2026, 12, 3)}, "not older"),
        ({"reason": " "}, "says why"),
    ],
)
def test_a_credit_note_points_back_and_says_why(make_invoice, changes, words):
    [fault] = missing_words(make_invoice(corrects=replace(CORRECTION, **changes)))
    assert words in fault


def test_a_credit_note_below_nought_would_take_money(make_invoice):
    [fault] = missing_words(make_invoice(corrects=CORRECTION, gross=D("-0.01")))
    assert "gives money back" in fault


def test_reverse_charge_needs_both_tax_numbers(make_invoice):
    paper = make_invoice()
    row = replace(paper.tax_rows[1], category="AE", exempt_reason="Reverse charge")
    reverse = replace(paper, tax_rows=(row,), tax=D(0))
    assert missing_words(reverse) == ["Reverse charge needs the buyer's VAT number."]
    nameless = replace(reverse, seller=replace(paper.seller, tax_number=""))
    assert "Reverse charge needs the seller's VAT number." in missing_words(nameless)
    known = replace(reverse, buyer=replace(paper.buyer, tax_number="IE6433435F"))
    assert missing_words(known) == []


@pytest.mark.parametrize(
    ("category", "percent"), [("S", "0"), ("Z", "5"), ("E", "5"), ("AE", "20"), ("O", "1")]
)
def test_a_category_has_the_rates_that_it_may_have(make_invoice, category, percent):
    """BR-S-05, BR-Z-05, BR-E-05, BR-AE-05, BR-O-05 of EN 16931."""
    paper = make_invoice()
    row = replace(paper.tax_rows[1], category=category, percent=D(percent))
    assert any("0 %" in fault for fault in missing_words(replace(paper, tax_rows=(row,))))


@pytest.mark.parametrize(
    ("amount", "reason", "words"), [("1", " ", "no reason"), ("-1", "x", "above nought")]
)
def test_a_discount_on_the_whole_is_positive_and_explained(make_invoice, amount, reason, words):
    [fault] = missing_words(make_invoice(whole=(WholeLine(False, D(amount), reason, "S", D(20)),)))
    assert words in fault


def test_tax_in_other_money_stands_in_that_of_the_country_too(make_invoice):
    british = replace(make_invoice().seller, country="GB")
    [fault] = missing_words(make_invoice(seller=british, currency="EUR"))
    assert "its total must stand in GBP too" in fault
    sound = make_invoice(seller=british, currency="EUR", home_tax=HomeTax("GBP", D("80.12")))
    assert missing_words(sound) == []
