from datetime import date
from decimal import Decimal

import pytest

from invoicing.documents.invoice_content import Correction
from invoicing.documents.invoice_head import invoice_title
from invoicing.documents.invoice_pdf import invoice_pdf

CORRECTION = Correction("INV-2026-0040", date(2026, 11, 20), "cow 412 billed twice")


@pytest.mark.parametrize(
    ("changes", "title"),
    [
        ({}, "Invoice INV-2026-0042: £520.89 to pay by 1 Jan 2027"),
        ({"due_date": None}, "Invoice INV-2026-0042: £520.89 to pay"),
        ({"number": None}, "Draft invoice: £520.89, not yet sent"),
        ({"due": Decimal(0)}, "Invoice INV-2026-0042: paid"),
        ({"due": Decimal(0), "gross": Decimal(0)}, "Invoice INV-2026-0042: nothing to pay"),
        ({"due": Decimal(-5)}, "Invoice INV-2026-0042: £5.00 to your good"),
        ({"number": "CN-1", "corrects": CORRECTION}, "Credit note CN-1: £520.89 for invoice INV-2026-0040"),
        ({"currency": "CHF"}, "Invoice INV-2026-0042: CHF 520.89 to pay by 1 Jan 2027"),
    ],
)
def test_the_title_is_the_answer(make_invoice, changes, title):
    assert invoice_title(make_invoice(**changes)) == title


def test_a_credit_note_says_what_it_corrects_and_why(make_invoice, text_of):
    text = text_of(invoice_pdf(make_invoice(number="CN-1", corrects=CORRECTION)))
    assert "It corrects invoice INV-2026-0040 of 20 November 2026: cow 412 billed twice" in text
    assert "To credit £520.89" in text
    assert "How to pay" not in text


def test_a_draft_says_that_it_is_no_tax_document(make_invoice, text_of):
    text = text_of(invoice_pdf(make_invoice(number=None)))
    assert "draft, not a tax document" in text
    assert "Invoice number none yet" in text
    assert "Date of issue not yet" in text


def test_what_the_buyer_asked_for_stands_beside_the_dates(make_invoice, text_of):
    asked = {"order_number": "PO 4711", "buyer_reference": "Dairy unit 2"}
    period = (date(2026, 11, 1), date(2026, 11, 30))
    text = text_of(invoice_pdf(make_invoice(period=period, **asked)))
    assert "Work done 1 Nov 2026 to 30 Nov 2026" in text
    assert "Your order number PO 4711 Your reference Dairy unit 2" in text
    assert "Your order number" not in text_of(invoice_pdf(make_invoice()))
