"""Money that came in: in part, over, for several invoices, and what cannot be."""

from datetime import date, timedelta
from decimal import Decimal

import pytest
from django.core.exceptions import ValidationError

from invoicing.domain.settling import PaymentMethod
from invoicing.models import Payment
from invoicing.selectors.payment_rest import payment_rest
from invoicing.services.lock_period import PeriodLocked, lock_period
from invoicing.services.note_payment import MoneyReceived, PaymentRefused, note_payment
from invoicing.services.set_against import CannotSettle
from tests.factories import NOON, make_house
from tests.invoicing.issued_papers import issued

DAY = date(2026, 2, 20)


def money(house, amount, shares=None, **fields):
    told = {"farm": house.farm, "received_on": DAY, "currency": "GBP", "method": PaymentMethod.CASH, **fields}
    return MoneyReceived(amount=Decimal(amount), shares=shares or {}, **told)


def note(house, amount, shares=None, **fields):
    return note_payment(money=money(house, amount, shares, **fields), at=NOON, by=house.office)


def test_a_part_leaves_the_rest_of_the_invoice_open(house):
    bill = issued(house.farm, "100")
    payment = note(house, "40", {bill.pk: Decimal(40)}, note="In the yard")
    bill.refresh_from_db()
    assert (bill.settled, bill.is_open, bill.open_amount) == (40, True, 60)
    assert payment_rest(payment) == 0
    kept = payment.allocations.within(house.scope).get()
    assert (kept.on, kept.noted_by, payment.note) == (DAY, house.office, "In the yard")


def test_one_payment_for_several_invoices_and_what_is_over_stays_on_the_account(house):
    first, second = issued(house.farm, "100"), issued(house.farm, "50.50")
    payment = note(house, "160", {first.pk: Decimal(100), second.pk: Decimal("50.50")})
    for bill in (first, second):
        bill.refresh_from_db()
        assert not bill.is_open
    assert payment_rest(payment) == Decimal("9.50")


def test_money_that_came_before_the_invoice_counts_from_its_day_on(house):
    bill = issued(house.farm, "100", on=DAY + timedelta(days=3))
    payment = note(house, "100", {bill.pk: Decimal(100)})
    assert payment.allocations.within(house.scope).get().on == DAY + timedelta(days=3)


@pytest.mark.parametrize(
    ("amount", "share", "refusal"),
    [
        ("0", None, PaymentRefused),
        ("-5", None, PaymentRefused),
        ("5.001", None, PaymentRefused),
        ("200", "100.01", CannotSettle),
        ("50", "50.01", CannotSettle),
        ("50", "0", CannotSettle),
        ("50", "-1", CannotSettle),
        ("50", "1.001", CannotSettle),
    ],
)
def test_what_does_not_fit_is_refused_and_leaves_nothing(house, amount, share, refusal):
    bill = issued(house.farm, "100")
    with pytest.raises(refusal):
        note(house, amount, {bill.pk: Decimal(share)} if share else {})
    bill.refresh_from_db()
    assert bill.settled == 0
    assert not Payment.objects.within(house.scope).exists()


def test_the_day_may_lie_neither_ahead_nor_in_a_closed_period(house):
    with pytest.raises(PaymentRefused, match="ahead"):
        note(house, "5", received_on=date(2026, 3, 3))
    lock_period(scope=house.scope, until=DAY, why="The year is done", at=NOON, by=house.owner)
    with pytest.raises(PeriodLocked):
        note(house, "5")
    assert note(house, "5", received_on=DAY + timedelta(days=1)).pk


def test_another_currency_or_another_business_is_refused(house):
    dollars = issued(house.farm, "100", currency="USD")
    with pytest.raises(CannotSettle, match="USD"):
        note(house, "100", {dollars.pk: Decimal(100)})
    theirs = issued(make_house("Fell & Beck").farm, "100")
    with pytest.raises(CannotSettle, match="not there"):
        note(house, "100", {theirs.pk: Decimal(100)})
    with pytest.raises(ValidationError):
        note(house, "100", farm=house.farm, reference="x" * 141)
