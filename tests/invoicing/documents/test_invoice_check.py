"""What must not be printed: sums after EN 16931's business rules, contents after SI 1995/2518 reg 14(1)."""

from dataclasses import replace
from decimal import Decimal

import pytest

from invoicing.documents.invoice_check import InvoiceIncomplete, check_invoice
from invoicing.documents.invoice_content import Party, WholeLine
from invoicing.domain.amounts import RoundingRule
from trimops.kernel.errors import RuleBroken

PENNY = Decimal("0.01")


def test_a_sound_invoice_passes(make_invoice):
    check_invoice(make_invoice())


@pytest.mark.parametrize(
    ("field", "words"),
    [
        ("net", "sum of the lines is 527.41, not 527.42"),
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


def test_the_tax_must_be_that_rate_by_the_rounding_rule_of_the_business(make_invoice):
    """The official rules let it be wrong by 0.99 (BR-CO-17); 467.41 at 20 % is 93.482."""
    paper = make_invoice()
    down = _with_tax(paper, Decimal("93.49"))
    with pytest.raises(InvoiceIncomplete, match="rounded as the business rounds"):
        check_invoice(down)
    check_invoice(replace(paper, rounding_rule=RoundingRule.PER_RATE))


def test_a_tax_right_by_one_rule_is_wrong_by_another(make_invoice):
    line = replace(
        make_invoice().lines[1], quantity=Decimal(1), unit_price=Decimal("13.33"), net=Decimal("13.33")
    )
    row = replace(make_invoice().tax_rows[0], taxable=Decimal("39.99"), tax=Decimal("8.01"))
    sums = {"net": Decimal("39.99"), "tax": Decimal("8.01"), "gross": Decimal("48.00"), "paid": Decimal(0)}
    paper = replace(make_invoice(), lines=(line,) * 3, tax_rows=(row,), due=Decimal("48.00"), **sums)
    check_invoice(replace(paper, rounding_rule=RoundingRule.PER_LINE))
    check_invoice(paper)
    with pytest.raises(InvoiceIncomplete, match="rounded as the business rounds"):
        check_invoice(replace(paper, rounding_rule=RoundingRule.PER_RATE))


def test_a_line_that_is_not_its_quantity_times_price_is_named(make_invoice):
    paper = make_invoice()
    lines = (replace(paper.lines[0], quantity=Decimal(18)), *paper.lines[1:])
    with pytest.raises(InvoiceIncomplete, match="Line 1 comes to 207"):
        check_invoice(replace(paper, lines=lines))


def test_a_discount_on_a_line_is_taken_off_it(make_invoice):
    paper = make_invoice()
    cut = replace(paper.lines[0], quantity=Decimal(18), allowance=Decimal("11.50"))
    check_invoice(replace(paper, lines=(cut, *paper.lines[1:])))
    fine = replace(cut, allowance=Decimal("11.4999"))
    with pytest.raises(InvoiceIncomplete, match="more decimals than GBP"):
        check_invoice(replace(paper, lines=(fine, *paper.lines[1:])))


def test_discounts_charges_and_rounding_on_the_whole_add_up(make_invoice):
    """BR-CO-11, 12, 13, 16."""
    paper = make_invoice()
    whole = (
        WholeLine(False, Decimal("10.00"), "Agreed", "S", Decimal(20)),
        WholeLine(True, Decimal("10.00"), "Gate", "S", Decimal(20)),
    )
    both = {"allowances": Decimal("10.00"), "charges": Decimal("10.00"), "line_sum": paper.net}
    right = replace(paper, whole=whole, rounding=PENNY, due=paper.due + PENNY, **both)
    check_invoice(right)
    for field, words in (
        ("allowances", "BR-CO-11"),
        ("charges", "BR-CO-12"),
        ("line_sum", "BR-CO-10"),
        ("rounding", "rounded"),
    ):
        with pytest.raises(InvoiceIncomplete, match=words):
            check_invoice(replace(right, **{field: getattr(right, field) + PENNY}))


def _with_tax(paper, tax):
    rows = (replace(paper.tax_rows[0], tax=tax), paper.tax_rows[1])
    more = tax - paper.tax
    return replace(paper, tax_rows=rows, tax=tax, gross=paper.gross + more, due=paper.due + more)


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
