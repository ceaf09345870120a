from dataclasses import replace
from datetime import date
from decimal import Decimal

from invoicing.documents.invoice_content import Correction, HomeTax, Payment, TaxRow, WholeLine
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
    assert (
        "Sort code 00-00-00 Account 00000000 Amount £520.89 Reference INV-2026-0042 Due 30 days after" in text
    )
    assert "How to pay" not in text_of(invoice_pdf(make_invoice(payment=Payment())))


def test_british_tax_on_a_foreign_currency_is_told_in_sterling_too(make_invoice, text_of):
    text = text_of(invoice_pdf(make_invoice(currency="EUR", home_tax=HomeTax("GBP", Decimal("80.12")))))
    assert "Total VAT €93.48" in text
    assert "VAT in sterling £80.12" in text


def test_the_tax_goes_by_the_name_it_has_in_the_country(make_invoice, text_of):
    text = text_of(invoice_pdf(make_invoice(tax_name="GST")))
    assert "Total with GST" in text
    assert "VAT" not in text


def test_the_highest_rate_stands_first(make_invoice, text_of):
    paper = make_invoice()
    text = text_of(invoice_pdf(replace(paper, tax_rows=paper.tax_rows[::-1])))
    assert text.index("20 % 467.41") < text.index("exempt 60.00 0.00")


def test_discounts_and_charges_on_the_whole_stand_between_the_lines_and_the_net(make_invoice, text_of):
    paper = make_invoice()
    whole = (
        WholeLine(
            False, Decimal("23.37"), "agreed for the herd", "S", Decimal(20), Decimal("467.41"), Decimal(5)
        ),
        WholeLine(True, Decimal("4.50"), "disinfectant", "S", Decimal(20)),
    )
    rows = (TaxRow("S", Decimal(20), Decimal("448.54"), Decimal("89.71")), paper.tax_rows[1])
    sums = {"net": Decimal("508.54"), "tax": Decimal("89.71"), "gross": Decimal("598.25")}
    parts = {"line_sum": paper.net, "allowances": Decimal("23.37"), "charges": Decimal("4.50")}
    last = {"rounding": Decimal("0.05"), "due": Decimal("498.30")}
    text = text_of(invoice_pdf(replace(paper, whole=whole, tax_rows=rows, **sums, **parts, **last)))
    for told in (
        "All lines £527.41",
        "Discount 5 % of 467.41: agreed for the herd (20 %) −£23.37",
        "Charge: disinfectant (20 %) £4.50",
        "Total without VAT £508.54",
        "Paid already −£100.00 Rounding £0.05 To pay £498.30",
    ):
        assert told in text


def test_reverse_charge_is_named_even_where_the_reason_does_not_say_it(make_invoice, text_of):
    """Directive 2006/112/EC, article 226 (11a), as read for this project (standards-facts, section 5)."""
    paper = make_invoice()
    lines = tuple(replace(line, tax_category="AE", tax_percent=Decimal(0)) for line in paper.lines)
    row = TaxRow("AE", Decimal(0), paper.net, Decimal(0), "VAT is accounted for by the customer.")
    buyer = replace(paper.buyer, tax_number="IE6433435F")
    sums = {"tax": Decimal(0), "gross": paper.net, "due": paper.net, "paid": Decimal(0)}
    text = text_of(invoice_pdf(replace(paper, buyer=buyer, lines=lines, tax_rows=(row,), **sums)))
    assert "Reverse charge: VAT is accounted for by the customer." in text
    assert "VAT number IE6433435F" in text


def test_a_credit_note_and_a_draft_say_why_nothing_is_to_be_paid(make_invoice, text_of):
    credit = {"number": "CN-1", "corrects": Correction("INV-1", date(2026, 12, 1), "twice")}
    assert "Nothing is to be paid on this paper" in text_of(invoice_pdf(make_invoice(**credit)))
    assert "How to pay stands here once it is issued" in text_of(invoice_pdf(make_invoice(number=None)))


def test_notes_and_the_discount_for_prompt_payment_stand_last(make_invoice, text_of):
    text = text_of(invoice_pdf(make_invoice()))
    assert "No discount for early payment. Notes Thank you. Visit of 1 December 2026" in text
    assert "Notes" not in text_of(invoice_pdf(make_invoice(notes=())))
