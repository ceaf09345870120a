"""A credit note set off against an open invoice."""

from datetime import date
from decimal import Decimal

import pytest

from invoicing.services.lock_period import PeriodLocked, lock_period
from invoicing.services.set_off_credit import CannotSetOff, set_off_credit
from tests.factories import MONDAY, NOON, make_farm
from tests.invoicing.issued_papers import credited, issued
from tests.invoicing.services.test_note_payment import note


def set_off(house, note_row, bill, amount=None):
    return set_off_credit(credit_note=note_row, invoice=bill, at=NOON, by=house.owner, amount=amount)


def test_as_much_as_fits(house):
    bill = issued(house.farm, "100")
    note(house, "80", {bill.pk: Decimal(80)})
    credit = credited(bill, "30")
    row = set_off(house, credit, bill)
    bill.refresh_from_db()
    credit.refresh_from_db()
    assert (row.amount, row.on) == (20, MONDAY)
    assert (bill.is_open, credit.is_open, credit.open_amount) == (False, True, 10)
    other = issued(house.farm, "100")
    set_off(house, credit, other, Decimal(4))
    other.refresh_from_db()
    assert other.open_amount == 96


def test_never_more_than_fits_nor_nothing(house):
    bill = issued(house.farm, "10")
    for amount in ("10.01", "0", "-1"):
        with pytest.raises(CannotSetOff, match=r"Up to 10\.00"):
            set_off(house, credited(bill, "30"), bill, Decimal(amount))


def test_only_a_credit_note_against_an_invoice_of_the_same_farm_and_currency(house):
    bill = issued(house.farm, "10")
    second = make_farm(house.business, "High Croft", by=house.owner)
    for note_row, against in (
        (bill, issued(house.farm, "10")),
        (credited(bill, "10"), credited(bill, "10")),
        (credited(bill, "10"), issued(second, "10")),
        (credited(bill, "10"), issued(house.farm, "10", currency="EUR")),
    ):
        with pytest.raises(CannotSetOff):
            set_off(house, note_row, against)


def test_not_on_a_locked_day(house):
    bill = issued(house.farm, "10", on=date(2026, 2, 2))
    lock_period(scope=house.scope, until=date(2026, 3, 1), why="Done", at=NOON, by=house.owner)
    assert set_off(house, credited(bill, "10"), bill).on == MONDAY
    early = NOON.replace(month=2, day=20)
    with pytest.raises(PeriodLocked):
        set_off_credit(
            credit_note=credited(bill, "1"), invoice=issued(house.farm, "1"), at=early, by=house.owner
        )
