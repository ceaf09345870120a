"""Credit notes: of everything, of some, never more than there was."""

from decimal import Decimal as D

import pytest

from invoicing.domain.credit_lines import CreditAsk
from invoicing.domain.discount import Discount
from invoicing.models import BilledWork, Invoice
from invoicing.selectors.credit_left import credit_left
from invoicing.services.credit_invoice import CannotCredit, draft_credit_note
from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.issue_invoice import issue_invoice
from invoicing.services.open_draft import CreditIsFixed
from invoicing.services.set_whole_amount import WholeChange, set_whole_amount
from invoicing.services.strike_line import strike_line
from tests.factories import NOON, make_prices
from tests.invoicing.services.billing import as_issued, hand, line_of, lines_of, worked


def credit(house, invoice, asks=None, *, again=False):
    return draft_credit_note(
        invoice=invoice,
        asks=asks,
        reason="Billed wrongly",
        work_may_be_billed_again=again,
        at=NOON,
        by=house.office,
    )


@pytest.fixture
def issued(house):
    """A call-out, three cows and a block at odd prices, and 1.01 off the whole."""
    make_prices(house.business, functional="9.99", corrective="14.33", call_out="35.35", block="11.25")
    draft = draft_invoice(visit=worked(house, 3), at=NOON)
    change = WholeChange(False, Discount(amount=D("1.01")))
    draft = set_whole_amount(invoice=draft, change=change, hand=hand(house))
    return as_issued(house, draft)


def test_a_credit_note_of_everything_is_the_invoice_over_again(house, issued):
    note = credit(house, issued)
    assert lines_of(note) == lines_of(issued)
    for name in ("line_sum", "allowances", "net", "tax", "gross", "payable"):
        assert getattr(note, name) == getattr(issued, name)
    assert (note.kind, note.corrects, note.reason) == ("credit_note", issued, "Billed wrongly")
    with pytest.raises(CannotCredit, match="credited already"):
        credit(house, issued)


def test_some_now_and_the_rest_later_come_to_the_same(house, issued):
    cows = line_of(issued, "functional")
    first = credit(house, issued, [CreditAsk(cows.pk, quantity=D(1))])
    first = issue_invoice(invoice=first, at=NOON, by=house.owner)
    assert (first.line_sum, first.allowances) == (D("9.99"), D("0.12"))  # 1.01 x 9.99 / 80.91
    assert credit_left(issued)[cows.pk].quantity == 1
    rest = issue_invoice(invoice=credit(house, issued), at=NOON, by=house.owner)
    assert first.payable + rest.payable == issued.payable
    assert credit_left(issued) == {}


def test_more_than_is_left_is_refused_with_what_is_left(house, issued):
    cows = line_of(issued, "functional")
    with pytest.raises(CannotCredit, match="2 are left"):
        credit(house, issued, [CreditAsk(cows.pk, quantity=D(3))])
    with pytest.raises(CannotCredit, match=r"19.98 is left"):
        credit(house, issued, [CreditAsk(cows.pk, amount=D(20))])
    assert not Invoice.objects.within(house.scope).credit_notes().exists()


def test_only_an_issued_invoice_is_credited_and_its_note_is_not_edited(house, issued):
    note = credit(house, issued)
    with pytest.raises(CannotCredit, match="Only an issued invoice"):
        credit(house, note)
    with pytest.raises(CreditIsFixed):
        strike_line(line=line_of(note, "block"), hand=hand(house))


def test_work_that_may_be_billed_again_is_let_go_of_when_the_note_is_issued(house, issued):
    note = credit(house, issued, again=True)
    held = BilledWork.objects.within(house.scope).filter(holds=True)
    assert held.count() == 5
    issue_invoice(invoice=note, at=NOON, by=house.owner)
    assert held.count() == 0
    again = draft_invoice(visit=issued.visit, at=NOON)
    assert lines_of(again) == lines_of(issued)


def test_work_that_may_not_stays_held(house, issued):
    issue_invoice(invoice=credit(house, issued), at=NOON, by=house.owner)
    assert BilledWork.objects.within(house.scope).filter(holds=True).count() == 5
    assert draft_invoice(visit=issued.visit, at=NOON) == issued
