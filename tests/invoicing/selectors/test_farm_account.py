"""The account of a farm, and of two that one payer pays for."""

from datetime import date, timedelta
from decimal import Decimal

from farms.models import Payer
from invoicing.domain.account_lines import AccountWhat
from invoicing.selectors.farm_account import farm_account
from invoicing.services.set_off_credit import set_off_credit
from invoicing.services.take_back_payment import take_back_payment
from invoicing.services.write_off import write_off
from tests.factories import MONDAY, NOON, make_farm
from tests.invoicing.issued_papers import ISSUED_ON, credited, issued
from tests.invoicing.services.test_note_payment import DAY, note


def account(house, farm=None, first=date(2026, 1, 1), last=MONDAY, **more):
    return farm_account(house.scope, farm or house.farm, first, last, **more)


def test_every_kind_of_line_with_what_is_owed_after_it(house):
    bill = issued(house.farm, "100")
    note(house, "40", {bill.pk: Decimal(40)})
    credited(bill, "30", on=DAY)
    write_off(invoice=bill, reason="Rounded", at=NOON, by=house.owner, amount=Decimal("0.50"))
    lines = account(house).lines
    assert [(line.move.what, line.move.amount, line.balance) for line in lines] == [
        (AccountWhat.INVOICE, 100, 100),
        (AccountWhat.CREDIT_NOTE, -30, 70),
        (AccountWhat.PAYMENT, -40, 30),
        (AccountWhat.WRITE_OFF, Decimal("-0.50"), Decimal("29.50")),
    ]


def test_what_was_before_opens_it_and_what_was_taken_back_does_not_count(house):
    bill = issued(house.farm, "100")
    payment = note(house, "40", {bill.pk: Decimal(40)})
    found = account(house, first=ISSUED_ON + timedelta(days=1))
    assert (found.opening, found.closing, len(found.lines)) == (100, 60, 1)
    take_back_payment(payment=payment, because="Twice", at=NOON, by=house.owner)
    assert account(house).closing == 100


def test_another_currency_has_an_account_of_its_own(house):
    issued(house.farm, "100", currency="EUR")
    assert account(house).lines == ()
    assert account(house, currency="EUR").closing == 100


def test_what_one_payer_pays_over_two_farms_balances_on_both(house):
    second = make_farm(house.business, "High Croft", by=house.owner)
    payer = Payer.objects.create(business=house.business, name="The Estate")
    for farm in (house.farm, second):
        farm.payer = payer
        farm.save()
    here, there = issued(house.farm, "100"), issued(second, "50")
    note(house, "150", {here.pk: Decimal(100), there.pk: Decimal(50)})
    set_off_credit(credit_note=credited(here, "20"), invoice=issued(second, "20"), at=NOON, by=house.owner)
    first, other = account(house), account(house, second)
    assert (first.closing, other.closing) == (0, 0)
    after = DAY + timedelta(days=400)
    opened = [account(house, farm, first=after, last=after).opening for farm in (house.farm, second)]
    assert opened == [0, 0]
    assert [line.move.what for line in other.lines if line.credit] == [AccountWhat.FROM_OTHER] * 2
    assert sum(line.debit for line in first.lines if line.move.what is AccountWhat.TO_OTHER) == 70


def test_the_number_of_queries_is_fixed(house, django_assert_num_queries):
    for _ in range(12):
        bill = issued(house.farm, "10")
        note(house, "10", {bill.pk: Decimal(10)})
    with django_assert_num_queries(4):
        assert len(account(house).lines) == 24
