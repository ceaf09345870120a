"""The invoice as its buyer gets it, read back with pypdf.

Contents list: Value Added Tax Regulations 1995 (SI 1995/2518), regulation 14(1), as read for this project
(standards-facts, section 5).
"""

from dataclasses import replace
from datetime import date, datetime
from functools import cache
from io import BytesIO
from pathlib import Path

import pypdfium2
import pytest
from pypdf import PdfReader

from invoicing.documents.invoice_check import InvoiceIncomplete
from invoicing.documents.invoice_content import Correction, InvoicePaper, Party
from invoicing.documents.invoice_pdf import invoice_info, invoice_pdf
from tests.invoicing.documents.paper_pictures import faces_not_inside, page_texts

GOLDEN = Path(__file__).parents[3] / "fixtures" / "documents" / "invoice" / "invoice_text.txt"

REGULATION_14_1 = {
    "sequential number that identifies the document": ["INV-2026-0042"],
    "time of the supply": ["Tax point (date of supply)", "1 December 2026"],
    "date of issue": ["Date of issue", "2 December 2026"],
    "name, address and number of the supplier": [
        "Skelderdale Foot Trimming",
        "2 Mill Lane",
        "SK0 0AA",
        "GB000000000",
    ],
    "name and address of the customer": ["J. Marsden & Daughters", "High Thornbeck", "SK0 0AB"],
    "description that identifies the services": ["Functional trim", "Corrective trim", "Block", "Travel"],
    "for each: quantity, rate of tax, amount without it": [
        "17 11.50 20 % 195.50",
        "13 16.00 20 % 208.00",
    ],
    "gross total without tax": ["Total without VAT £527.41"],
    "rate of any cash discount": ["No discount for early payment."],
    "total tax in sterling": ["Total VAT £93.48"],
    "unit price": ["Unit price GBP", "11.50"],
}

# Directive 2006/112/EC, article 226, as far as a trimmer's invoice can hold it, as read in a secondary copy for this
# project (standards-facts, section 5, and trade-facts, section 9.2).
ARTICLE_226 = {
    "(1) date of issue": ["Date of issue 2 December 2026"],
    "(2) sequential number": ["Invoice number INV-2026-0042"],
    "(3) VAT number of the supplier": ["VAT number GB000000000"],
    "(4) VAT number of the customer who is liable": ["VAT number IE6433435F"],
    "(5) names and addresses": [
        "Skelderdale Foot Trimming 2 Mill Lane",
        "J. Marsden & Daughters High Thornbeck",
    ],
    "(6) quantity and nature": ["Travel 46.5 km"],
    "(7) date of the supply": ["Tax point (date of supply) 1 December 2026"],
    "(8) taxable amount per rate, unit price, reductions": [
        "20 % 467.41 93.48",
        "11.50",
        "No discount for early payment.",
    ],
    "(9) rate": ["VAT rate", "20 %"],
    "(10) tax payable": ["Total VAT £93.48"],
    "(11) why exempt": ["Exempt: text handed in by the business."],
}


@cache
def printed(paper: InvoicePaper) -> str:
    """Drawn once for all the items of a list."""
    return " ".join(page_texts(invoice_pdf(paper)))


@pytest.mark.parametrize("item", ARTICLE_226)
def test_it_holds_what_the_directive_wants(make_invoice, item):
    buyer = replace(make_invoice().buyer, tax_number="IE6433435F")
    text = printed(make_invoice(buyer=buyer))
    assert [words for words in ARTICLE_226[item] if words not in text] == []


@pytest.mark.parametrize("item", REGULATION_14_1)
def test_it_holds_what_the_regulation_wants(make_invoice, item):
    text = printed(make_invoice())
    assert [words for words in REGULATION_14_1[item] if words not in text] == []


def test_a_reverse_charge_is_named_in_words(make_invoice, text_of):
    paper = make_invoice()
    lines = tuple(replace(line, tax_category="AE", tax_percent=line.tax_percent * 0) for line in paper.lines)
    row = replace(paper.tax_rows[1], category="AE", taxable=paper.net, exempt_reason="Reverse charge")
    sums = {"tax": paper.tax * 0, "gross": paper.net, "paid": paper.net, "due": paper.net * 0}
    buyer = replace(paper.buyer, tax_number="IE6433435F")
    reverse = replace(paper, buyer=buyer, lines=lines, tax_rows=(row,), **sums)
    assert "Reverse charge" in text_of(invoice_pdf(reverse))


def test_its_text_is_the_one_that_was_looked_at(make_invoice, text_of):
    assert text_of(invoice_pdf(make_invoice())) == GOLDEN.read_text().strip()


def test_the_same_paper_gives_the_same_bytes_and_another_other_ones(make_invoice):
    assert invoice_pdf(make_invoice()) == invoice_pdf(make_invoice())
    assert invoice_pdf(make_invoice()) != invoice_pdf(make_invoice(number="INV-2026-0043"))


def test_only_a_draft_has_the_word_across_the_page(make_invoice, text_of):
    assert "DRAFT" in text_of(invoice_pdf(make_invoice(number=None)))
    assert "DRAFT" not in text_of(invoice_pdf(make_invoice()))


def test_the_file_names_itself_and_has_all_fonts_inside(make_invoice):
    for paper in (make_invoice(), make_invoice(number=None)):
        reader = PdfReader(BytesIO(invoice_pdf(paper)))
        assert reader.metadata.author == "Skelderdale Foot Trimming"
        assert reader.metadata.creation_date == paper.made_at
        assert reader.trailer["/Root"]["/Lang"] == "en-GB"
        assert faces_not_inside(invoice_pdf(paper)) == []


def test_it_is_one_page_with_ink(make_invoice):
    document = pypdfium2.PdfDocument(invoice_pdf(make_invoice()))
    assert len(document) == 1
    assert min(bytes(document[0].render(scale=2).buffer)) < 60


@pytest.mark.parametrize(
    "name", ["A & <b>B</b> Ŵyl", "Żółć Ελλάδα", "y" * 200, "Long Name of Partners " * 12]
)
def test_any_name_comes_out_as_it_was_written(make_invoice, text_of, name):
    paper = make_invoice(seller=Party(name, (name,), "GB0"), buyer=Party(name, (name,)))
    assert text_of(invoice_pdf(paper)).replace(" ", "").count(name.replace(" ", "")[:30]) >= 3


def test_the_company_number_stands_with_the_tax_number(make_invoice, text_of):
    seller = replace(make_invoice().seller, registration="0815", registration_name="Company number")
    assert "VAT number GB000000000 · Company number 0815" in text_of(invoice_pdf(make_invoice(seller=seller)))


def test_what_does_not_add_up_is_not_printed(make_invoice):
    with pytest.raises(InvoiceIncomplete):
        invoice_pdf(make_invoice(net=make_invoice().gross))


def test_a_credit_note_is_a_paper_of_its_own(make_invoice):
    note = make_invoice(number="CN-1", corrects=Correction("INV-1", date(2026, 12, 1), "twice"))
    assert (
        PdfReader(BytesIO(invoice_pdf(note))).metadata.subject == "Credit note CN-1 to J. Marsden & Daughters"
    )


def test_the_file_is_named_by_what_it_comes_to(make_invoice):
    assert invoice_info(make_invoice()).title == "Invoice INV-2026-0042: £520.89 to pay by 1 Jan 2027"
    assert invoice_info(make_invoice(number=None)).subject == "Draft invoice to J. Marsden & Daughters"


def test_a_time_without_a_zone_is_refused(make_invoice):
    with pytest.raises(ValueError, match="time zone"):
        invoice_pdf(make_invoice(made_at=datetime(2026, 12, 1)))  # noqa: DTZ001
