"""Overdue invoices are put forward, each step once; what was paid falls away."""

from datetime import date, datetime, timedelta

import pytest

from invoicing.models import FarmTerms, MoneyRules, Reminder
from invoicing.services.decide_reminder import drop_reminder
from invoicing.services.propose_reminders import propose_reminders
from invoicing.services.write_off import write_off
from tests.factories import NOON, make_farm, make_house
from tests.invoicing.booked import booked, line

DUE = date(2026, 2, 16)


def late(days: int) -> datetime:
    return NOON.replace(year=2026, month=2, day=16) + timedelta(days=days)


@pytest.fixture
def reminding(house):
    MoneyRules.objects.create(business=house.business, reminder_days=[7, 21])
    return house


def steps(house):
    return list(Reminder.objects.within(house.scope).order_by("step").values_list("step", "state"))


def test_an_overdue_invoice_is_put_forward_once(reminding):
    booked(reminding.farm, line("100"))
    assert propose_reminders(business=reminding.business, at=late(6)) == 0
    assert [propose_reminders(business=reminding.business, at=late(7)) for _ in range(2)] == [1, 0]
    assert steps(reminding) == [(1, "proposed")]


def test_the_next_step_waits_until_the_first_was_decided_on(reminding):
    booked(reminding.farm, line("100"))
    propose_reminders(business=reminding.business, at=late(7))
    assert propose_reminders(business=reminding.business, at=late(60)) == 0
    row = Reminder.objects.within(reminding.scope).get()
    drop_reminder(reminder=row, because="They rang", at=late(60), by=reminding.office)
    assert propose_reminders(business=reminding.business, at=late(73)) == 0
    assert propose_reminders(business=reminding.business, at=late(74)) == 1
    assert steps(reminding) == [(1, "dropped"), (2, "proposed")]


def test_one_that_was_paid_falls_away(reminding):
    invoice = booked(reminding.farm, line("100"))
    propose_reminders(business=reminding.business, at=late(7))
    write_off(invoice=invoice, reason="Gone", at=late(8), by=reminding.office)
    assert propose_reminders(business=reminding.business, at=late(9)) == 0
    assert steps(reminding) == []


def test_a_farm_that_gets_no_reminders_gets_none(reminding):
    FarmTerms.objects.create(business=reminding.business, farm=reminding.farm, gets_reminders=False)
    other = make_farm(reminding.business, "High Croft", by=reminding.owner)
    FarmTerms.objects.create(business=reminding.business, farm=other)
    booked(reminding.farm, line("100"))
    booked(other, line("100"))
    assert propose_reminders(business=reminding.business, at=late(9)) == 1
    assert Reminder.objects.within(reminding.scope).get().invoice.farm == other


def test_credit_notes_and_paid_invoices_are_left_alone(reminding):
    paid = booked(reminding.farm, line("100"))
    booked(reminding.farm, line("10"), corrects=paid)
    write_off(invoice=paid, reason="Gone", at=late(1), by=reminding.office)
    assert propose_reminders(business=reminding.business, at=late(30)) == 0


def test_without_steps_nothing_is_put_forward(house):
    booked(house.farm, line("100"))
    assert propose_reminders(business=house.business, at=late(99)) == 0


def test_another_business_is_not_touched(reminding):
    stranger = make_house("Elsewhere Trimming")
    booked(stranger.farm, line("100"))
    assert propose_reminders(business=reminding.business, at=late(30)) == 0
    assert steps(stranger) == []
