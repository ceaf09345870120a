"""A payment taken back opens its invoices again; rows stay."""

from decimal import Decimal

import pytest

from invoicing.models import Payment
from invoicing.selectors.payment_rest import payment_rest
from invoicing.services.lock_period import PeriodLocked, lock_period
from invoicing.services.pay_back import MoneyBack, PaymentMethod, pay_back
from invoicing.services.take_back_payment import CannotTakeBack, take_back_payment
from invoicing.services.want_reason import ReasonMissing
from tests.factories import NOON
from tests.invoicing.issued_papers import credited, issued
from tests.invoicing.services.test_note_payment import DAY, note


def take_back(house, payment, because="The cheque bounced"):
    return take_back_payment(payment=payment, because=because, at=NOON, by=house.owner)


def test_its_invoices_are_open_again_and_what_was_noted_is_kept(house):
    bill = issued(house.farm, "100")
    payment = note(house, "100", {bill.pk: Decimal(100)})
    taken = take_back(house, payment)
    bill.refresh_from_db()
    assert (bill.settled, bill.is_open, payment_rest(taken)) == (0, True, 0)
    kept = taken.allocations.within(house.scope).get()
    assert (kept.undone_because, taken.taken_back_by) == ("The cheque bounced", house.owner)
    assert take_back(house, payment).taken_back_at == NOON
    assert not Payment.objects.within(house.scope).standing().exists()


def test_it_says_why(house):
    with pytest.raises(ReasonMissing):
        take_back(house, note(house, "10"), " ")


def test_money_paid_back_from_it_goes_first(house):
    payment = note(house, "10")
    back = pay_back(money=MoneyBack(payment, DAY, Decimal(4), PaymentMethod.CASH), at=NOON, by=house.owner)
    with pytest.raises(CannotTakeBack, match="first"):
        take_back(house, payment)
    take_back(house, back)
    assert payment_rest(payment) == 10
    assert take_back(house, payment).taken_back_at


def test_money_paid_back_on_a_credit_note_opens_it_again(house):
    note_row = credited(issued(house.farm, "100"), "30")
    back = pay_back(money=MoneyBack(note_row, DAY, Decimal(30), PaymentMethod.BANK), at=NOON, by=house.owner)
    take_back(house, back)
    note_row.refresh_from_db()
    assert (note_row.settled, note_row.is_open) == (0, True)


def test_not_in_a_closed_period(house):
    payment = note(house, "10")
    lock_period(scope=house.scope, until=DAY, why="Done", at=NOON, by=house.owner)
    with pytest.raises(PeriodLocked):
        take_back(house, payment)
