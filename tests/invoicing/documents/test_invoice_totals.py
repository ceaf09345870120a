from decimal import Decimal

from invoicing.documents.invoice_content import Payment
from invoicing.documents.invoice_pdf import invoice_pdf


def test_tax_is_told_by_rate_and_totals_below(make_invoice, text_of):
    text = text_of(invoice_pdf(make_invoice()))
    assert "20 % 467.41 93.48" in text
    assert "exempt 60.00 0.00" in text
    assert "Total without VAT £527.41 Total VAT £93.48 Total with VAT £620.89" in text
    assert "Paid already −£100.00 To pay £520.89" in text
    assert "Exempt: text handed in by the business." in text


def test_without_a_payment_so_far_none_is_named(make_invoice, text_of):
    text = text_of(invoice_pdf(make_invoice(paid=Decimal(0), due=Decimal("620.89"))))
    assert "Paid already" not in text
    assert "To pay £620.89" in text


def test_how_to_pay_stands_with_its_reference_and_terms(make_invoice, text_of):
    text = text_of(invoice_pdf(make_invoice()))
    assert "Sort code 00-00-00 Account 00000000 Reference INV-2026-0042 Due 30 days after issue." in text
    assert "How to pay" not in text_of(invoice_pdf(make_invoice(payment=Payment())))


def test_british_tax_on_a_foreign_currency_is_told_in_sterling_too(make_invoice, text_of):
    text = text_of(invoice_pdf(make_invoice(currency="EUR", tax_in_sterling=Decimal("80.12"))))
    assert "Total VAT €93.48" in text
    assert "VAT in sterling £80.12" in text


def test_the_tax_goes_by_the_name_it_has_in_the_country(make_invoice, text_of):
    text = text_of(invoice_pdf(make_invoice(tax_name="GST")))
    assert "Total with GST" in text
    assert "VAT" not in text
