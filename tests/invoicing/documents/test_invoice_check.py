"""What must not be printed: sums after EN 16931's business rules, contents after SI 1995/2518 reg 14(1)."""

from dataclasses import replace
from decimal import Decimal

import pytest

from invoicing.documents.invoice_check import InvoiceIncomplete, check_invoice
from invoicing.documents.invoice_content import Party
from trimops.kernel.errors import RuleBroken

PENNY = Decimal("0.01")


def test_a_sound_invoice_passes(make_invoice):
    check_invoice(make_invoice())


@pytest.mark.parametrize(
    ("field", "words"),
    [
        ("net", "total without tax"),
        ("tax", "tax is not the sum"),
        ("gross", "net and tax together"),
        ("due", "what was paid"),
        ("paid", "what was paid"),
    ],
)
def test_a_penny_wrong_anywhere_is_refused(make_invoice, field, words):
    paper = make_invoice()
    with pytest.raises(InvoiceIncomplete, match=words):
        check_invoice(replace(paper, **{field: getattr(paper, field) + PENNY}))


def test_tax_rows_must_be_those_of_the_lines(make_invoice):
    paper = make_invoice()
    rows = (replace(paper.tax_rows[0], percent=Decimal(5)), paper.tax_rows[1])
    with pytest.raises(InvoiceIncomplete, match="sums of the lines"):
        check_invoice(replace(paper, tax_rows=rows))


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"number": " "}, "number is empty"),
        ({"seller": Party("", ("x",), "GB0")}, "seller's name"),
        ({"seller": Party("x", (), "GB0")}, "seller's name or address"),
        ({"buyer": Party("x", ())}, "buyer's name or address"),
        ({"seller": Party("x", ("y",))}, "VAT number is missing"),
    ],
)
def test_an_issued_invoice_lacks_nothing_that_the_law_wants(make_invoice, changes, words):
    with pytest.raises(InvoiceIncomplete, match=words):
        check_invoice(make_invoice(**changes))


def test_a_line_without_tax_needs_its_reason(make_invoice):
    paper = make_invoice()
    rows = (paper.tax_rows[0], replace(paper.tax_rows[1], exempt_reason=""))
    with pytest.raises(InvoiceIncomplete, match="reason why"):
        check_invoice(replace(paper, tax_rows=rows))


def test_a_line_needs_a_description(make_invoice):
    paper = make_invoice()
    with pytest.raises(InvoiceIncomplete, match="no description"):
        check_invoice(replace(paper, lines=(replace(paper.lines[0], description=" "), *paper.lines[1:])))


def test_a_draft_may_lack_what_is_not_known_yet_but_must_add_up(make_invoice):
    check_invoice(make_invoice(number=None, buyer=Party("", ())))
    with pytest.raises(InvoiceIncomplete):
        check_invoice(make_invoice(number=None, gross=Decimal(1)))


def test_the_refusal_is_one_that_the_site_knows_to_answer():
    assert issubclass(InvoiceIncomplete, RuleBroken)
    assert InvoiceIncomplete.code == "invoice_incomplete"
