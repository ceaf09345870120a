"""The paper of a draft, of an issued invoice and of a credit note, as values."""

from datetime import date
from decimal import Decimal

import pytest

from invoicing.models import DocumentAmount, Invoice, MoneyRules
from invoicing.selectors.invoice_content import invoice_content
from invoicing.selectors.kept_amounts import kept_amounts
from tests.factories import make_house
from tests.invoicing.drafts import issue, plain_draft


@pytest.fixture
def house(house):
    MoneyRules.objects.create(business=house.business, cash_discount_percent="2.50", cash_discount_days=7)
    return house


def test_a_draft_has_no_number_and_its_discount_no_day(house):
    paper = invoice_content(plain_draft(house))
    assert (paper.number, paper.due_date, paper.payment.terms) == (None, None, "")
    assert paper.cash_discount == "Discount for prompt payment: 2.5 % when paid within 7 days."


def test_an_issued_invoice_says_by_when_and_has_the_parties_of_its_day(house):
    row = issue(plain_draft(house), house)
    house.business.address = "Elsewhere"
    house.business.save()
    paper = invoice_content(Invoice.objects.within(house.scope).get(pk=row.pk))
    assert paper.payment.terms == "Please pay by 1 April 2026."
    assert paper.cash_discount.endswith("when paid by 9 March 2026.")
    assert paper.seller.address == ("1 Made-up Lane", "Nowhere")
    assert (paper.net, paper.tax, paper.gross, paper.due) == tuple(map(Decimal, ("10", "2", "12", "12")))


def test_a_credit_note_points_back_and_asks_for_no_money(house):
    bill = issue(plain_draft(house), house)
    note = issue(plain_draft(house, "5.00", corrects=bill, reason="Two cows too many"), house)
    paper = invoice_content(note)
    assert paper.corrects is not None
    assert (paper.corrects.invoice_number, paper.corrects.invoice_date) == (bill.number, date(2026, 3, 2))
    assert (paper.payment.terms, paper.cash_discount, paper.kind) == ("", "", "Credit note")


def test_what_is_on_the_whole_changes_the_tax_of_its_rate(house):
    draft = plain_draft(house)
    DocumentAmount.objects.create(
        business=house.business,
        invoice=draft,
        amount=Decimal(1),
        reason="A good year",
        tax_category="S",
        tax_percent=Decimal(20),
    )
    amounts = kept_amounts(draft)
    assert (amounts.allowances, amounts.net, amounts.tax) == (Decimal(1), Decimal(9), Decimal("1.80"))
    assert [(row.taxable, row.tax) for row in invoice_content(draft).tax_rows] == [
        (Decimal(9), Decimal("1.80"))
    ]


def test_lines_of_another_business_are_never_on_it(house):
    theirs = plain_draft(make_house("Fell & Beck"), "50.00")
    mine = plain_draft(house)
    assert [line.net for line in invoice_content(mine).lines] == [Decimal("10.00")]
    assert [line.net for line in invoice_content(theirs).lines] == [Decimal("50.00")]
