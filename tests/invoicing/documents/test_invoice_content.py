from datetime import date

from invoicing.documents.invoice_content import Correction


def test_a_paper_that_corrects_another_is_a_credit_note(make_invoice):
    assert make_invoice().kind == "Invoice"
    assert make_invoice(corrects=Correction("INV-1", date(2026, 12, 1), "twice")).kind == "Credit note"
