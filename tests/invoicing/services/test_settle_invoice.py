"""Random weeks of payments, set-offs, write-offs and undoings: the figures always agree with the rows."""

from datetime import timedelta
from decimal import Decimal

import pytest
from django.db import transaction
from django.db.models import Q, Sum
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from invoicing.domain.settling import PaymentMethod
from invoicing.models import Allocation, Invoice, Payment
from invoicing.selectors.farm_account import farm_account
from invoicing.selectors.payment_rest import payment_rest
from invoicing.services.pay_back import MoneyBack, pay_back
from invoicing.services.set_off_credit import set_off_credit
from invoicing.services.settle_invoice import SettledTooMuch, settle_invoice
from invoicing.services.take_back_payment import take_back_payment
from invoicing.services.undo_set_off import undo_set_off
from invoicing.services.use_rest import use_rest
from invoicing.services.write_off import write_off
from tests.factories import MONDAY, NOON, make_house
from tests.invoicing.issued_papers import ISSUED_ON, credited, issued
from tests.invoicing.services.test_note_payment import DAY, note
from tests.many_hands import ManyHands
from trimops.kernel.errors import RuleBroken

STEPS = ("pay", "pay_two", "rest", "back", "note_back", "take_back", "set_off", "undo", "write_off")
amounts = st.integers(1, 15000).map(lambda pence: Decimal(pence) / 100)
weeks = st.lists(st.tuples(st.sampled_from(STEPS), st.integers(0, 99), amounts), min_size=8, max_size=16)


@pytest.fixture
def house(db):
    return make_house()


class Desk:
    """Does one step of a random week; the rows that it acts on are picked by number."""

    def __init__(self, house):
        self.house = house
        self.bills = [issued(house.farm, amount) for amount in ("100", "33.33", "66.67")]
        self.notes = [credited(self.bills[0], "45")]

    def do(self, step, pick, amount):
        try:
            with transaction.atomic():
                getattr(self, step)(pick, amount)
        except RuleBroken:
            return

    def pay(self, pick, amount):
        note(self.house, amount, {self._of(self.bills, pick).pk: amount})

    def pay_two(self, pick, amount):
        half = (amount / 2).quantize(Decimal("0.01"))
        note(self.house, amount + half, {bill.pk: half for bill in self.bills[:2]})

    def rest(self, pick, amount):
        shares = {self._of(self.bills, pick).pk: amount}
        use_rest(payment=self._payment(pick), shares=shares, at=NOON, by=self.house.owner)

    def back(self, pick, amount):
        self._back(self._payment(pick), amount)

    def note_back(self, pick, amount):
        self._back(self._of(self.notes, pick), amount)

    def _back(self, source, amount):
        money = MoneyBack(source, DAY, amount, PaymentMethod.BANK)
        pay_back(money=money, at=NOON, by=self.house.owner)

    def take_back(self, pick, amount):
        take_back_payment(payment=self._payment(pick), because="Wrong", at=NOON, by=self.house.owner)

    def set_off(self, pick, amount):
        note_row, bill = self._of(self.notes, pick), self._of(self.bills, pick)
        set_off_credit(credit_note=note_row, invoice=bill, at=NOON, by=self.house.owner, amount=amount)

    def undo(self, pick, amount):
        rows = list(Allocation.objects.within(self.house.scope).order_by("pk"))
        if rows:
            undo_set_off(allocation=self._of(rows, pick), because="Wrong", at=NOON)

    def write_off(self, pick, amount):
        write_off(
            invoice=self._of(self.bills, pick), reason="Given up", at=NOON, by=self.house.owner, amount=amount
        )

    def _payment(self, pick):
        rows = list(Payment.objects.within(self.house.scope).order_by("pk"))
        return self._of(rows, pick) if rows else note(self.house, "20")

    @staticmethod
    def _of(rows, pick):
        return rows[pick % len(rows)]


def summed(rows):
    return rows.aggregate(sum=Sum("amount"))["sum"] or Decimal(0)


def check(house):
    standing = Allocation.objects.within(house.scope).filter(undone_at__isnull=True)
    for paper in Invoice.objects.within(house.scope):
        settled = summed(standing.filter(Q(invoice=paper) | Q(credit_note=paper)))
        assert paper.settled == settled <= paper.payable
        assert paper.is_open == (settled < paper.payable)
    payments = Payment.objects.within(house.scope).filter(taken_back_at__isnull=True)
    for payment in payments.filter(amount__gt=0):
        back = -summed(payments.filter(pays_back=payment))
        assert summed(standing.filter(payment=payment)) + back + payment_rest(payment) == payment.amount
        assert payment_rest(payment) >= 0
    assert balance_of(house) == _reckoned(house, payments, standing)


def balance_of(house):
    return farm_account(house.scope, house.farm, ISSUED_ON, MONDAY + timedelta(days=1)).closing


def _reckoned(house, payments, standing):
    """Issued less credits, less payments and what went back (below nought), less what was written off."""
    papers = Invoice.objects.within(house.scope)
    owed = papers.bills().aggregate(sum=Sum("payable"))["sum"]
    owed -= papers.credit_notes().aggregate(sum=Sum("payable"))["sum"]
    return owed - summed(payments) - summed(standing.filter(kind="write_off"))


@settings(max_examples=8, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(steps=weeks)
def test_whatever_is_done_nothing_is_settled_or_used_twice(house, steps):
    with transaction.atomic():
        desk = Desk(house)
        for step in steps:
            desk.do(*step)
        check(house)
        transaction.set_rollback(True)


def test_more_than_is_to_be_paid_is_refused_even_when_rows_say_so(house):
    bill = issued(house.farm, "10")
    for _ in range(2):
        Allocation.objects.create(
            business=house.business,
            invoice=bill,
            kind="write_off",
            reason="By hand",
            amount=6,
            on=DAY,
            noted_at=NOON,
            noted_by=house.owner,
        )
    with pytest.raises(SettledTooMuch, match=r"10\.00"):
        settle_invoice(invoice=bill)


@pytest.mark.django_db(transaction=True)
def test_eight_hands_at_once_settle_an_invoice_once(tmp_path, monkeypatch):
    house = make_house()
    bill = issued(house.farm, "30")
    hands = ManyHands(tmp_path, monkeypatch)

    def pay(_):
        try:
            note(house, "10", {bill.pk: Decimal(10)})
        except RuleBroken:
            return "refused"
        return "paid"

    answers = hands(pay, range(8))
    assert sorted(answers) == ["paid"] * 3 + ["refused"] * 5

    def look(_):
        return Invoice.objects.within(house.scope).get(pk=bill.pk).settled

    assert hands(look, [0]) == [30]
