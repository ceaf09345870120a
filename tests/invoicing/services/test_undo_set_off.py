"""What was set against an invoice is undone by a row that stays."""

from decimal import Decimal

import pytest

from invoicing.selectors.payment_rest import payment_rest
from invoicing.services.pay_back import MoneyBack, PaymentMethod, pay_back
from invoicing.services.set_off_credit import set_off_credit
from invoicing.services.undo_set_off import CannotUndo, undo_set_off
from invoicing.services.want_reason import ReasonMissing
from invoicing.services.write_off import write_off
from tests.factories import NOON
from tests.invoicing.issued_papers import credited, issued
from tests.invoicing.services.test_note_payment import DAY, note


def undo(allocation, because="Wrong invoice"):
    undo_set_off(allocation=allocation, because=because, at=NOON)


def test_a_credit_note_is_free_again_on_both_sides(house):
    bill = issued(house.farm, "100")
    credit = credited(bill, "30")
    row = set_off_credit(credit_note=credit, invoice=bill, at=NOON, by=house.owner)
    undo(row)
    undo(row)
    for paper, left in ((bill, 100), (credit, 30)):
        paper.refresh_from_db()
        assert (paper.open_amount, paper.is_open) == (left, True)


def test_a_part_of_a_payment_goes_back_to_its_rest(house):
    bill = issued(house.farm, "100")
    payment = note(house, "100", {bill.pk: Decimal(100)})
    undo(payment.allocations.within(house.scope).get())
    bill.refresh_from_db()
    assert (bill.is_open, payment_rest(payment)) == (True, 100)


def test_it_says_why(house):
    row = write_off(invoice=issued(house.farm, "1"), reason="Too little to chase", at=NOON, by=house.owner)
    with pytest.raises(ReasonMissing):
        undo(row, "")


def test_money_that_went_out_is_taken_back_instead(house):
    credit = credited(issued(house.farm, "100"), "30")
    money = MoneyBack(credit, DAY, Decimal(30), PaymentMethod.BANK)
    out = pay_back(money=money, at=NOON, by=house.owner)
    with pytest.raises(CannotUndo):
        undo(out.allocations.within(house.scope).get())
