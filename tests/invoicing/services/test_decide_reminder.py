"""Nothing goes out unless a person said so; what went out stays as it was."""

import hashlib
from datetime import date, timedelta
from decimal import Decimal as D

import pytest

from invoicing.models import FarmTerms, MoneyRules, ReferenceRate, Reminder, Sending
from invoicing.services.decide_reminder import (
    AlreadyDecided,
    ClaimNotReckoned,
    PaidMeanwhile,
    WhyMissing,
    approve_reminder,
    drop_reminder,
)
from invoicing.services.propose_reminders import propose_reminders
from invoicing.services.write_off import write_off
from tests.factories import NOON
from tests.invoicing.booked import booked, line

DUE = date(2026, 2, 16)
AFTER_FIFTY_DAYS = NOON.replace(month=4, day=7)


@pytest.fixture
def rules(house):
    """1,000.00 at 0.5 % and 8 points: the worked example of the domain, through the whole way."""
    return MoneyRules.objects.create(
        business=house.business, reminder_days=[7, 21], fixed_sums=[["0", "40"], ["1000", "70"]]
    )


@pytest.fixture
def proposed(house, rules):
    booked(house.farm, line("1000", "0", "Z"))
    propose_reminders(business=house.business, at=AFTER_FIFTY_DAYS)
    return Reminder.objects.within(house.scope).get()


def approve(reminder, house):
    return approve_reminder(reminder=reminder, at=AFTER_FIFTY_DAYS, by=house.office)


def charge_interest(house, rules):
    ReferenceRate.objects.create(
        business=house.business, percent=D("0.5"), valid_from=date(2025, 1, 1), source="The bank's page"
    )
    rules.charges_interest = True
    rules.save()


def test_approving_freezes_the_paper_and_queues_it(house, proposed):
    FarmTerms.objects.create(
        business=house.business, farm=house.farm, send_to=["a@farm.example", "b@farm.example"]
    )
    sendings = approve(proposed, house)
    row = Reminder.objects.within(house.scope).get()
    assert (row.state, row.decided_by, row.open_amount, row.interest) == ("approved", house.office, 1000, 0)
    assert hashlib.sha256(bytes(row.pdf)).hexdigest() == row.pdf_sha256
    assert [sending.outgoing.address for sending in sendings] == ["a@farm.example", "b@farm.example"]
    assert {sending.reminder_id for sending in sendings} == {row.pk}


def test_without_an_address_it_is_there_to_be_printed(house, proposed):
    assert approve(proposed, house) == []
    assert bytes(Reminder.objects.within(house.scope).get().pdf).startswith(b"%PDF")


def test_interest_and_the_fixed_sum_are_claimed_only_where_the_business_wants_it(house, rules, proposed):
    charge_interest(house, rules)
    approve(proposed, house)
    row = Reminder.objects.within(house.scope).get()
    assert (row.interest, row.fixed_sum, row.reckoned_on) == (D("11.64"), 70, date(2026, 4, 7))
    assert row.working == "17 Feb 2026 to 7 Apr 2026: 1000.00 × 8.5 % × 50 / 365 days = 11.6438"


def test_what_was_approved_keeps_its_figures_whatever_comes(house, rules, proposed):
    charge_interest(house, rules)
    approve(proposed, house)
    ReferenceRate.objects.within(house.scope).update(percent=D(9))
    write_off(invoice=proposed.invoice, reason="Gone", at=AFTER_FIFTY_DAYS, by=house.office)
    propose_reminders(business=house.business, at=AFTER_FIFTY_DAYS)
    assert Reminder.objects.within(house.scope).get().interest == D("11.64")


def test_a_rate_that_is_missing_is_put_down_first(house, rules, proposed):
    rules.charges_interest = True
    rules.save()
    with pytest.raises(ClaimNotReckoned, match="31 December 2025"):
        approve(proposed, house)
    assert Reminder.objects.within(house.scope).get().state == "proposed"


def test_a_second_press_sends_nothing(house, proposed):
    house.farm.email = "a@farm.example"
    house.farm.save()
    approve(proposed, house)
    with pytest.raises(AlreadyDecided):
        approve(proposed, house)
    assert Sending.objects.within(house.scope).count() == 1


def test_one_paid_meanwhile_does_not_go_out(house, proposed):
    write_off(invoice=proposed.invoice, reason="Gone", at=AFTER_FIFTY_DAYS, by=house.office)
    with pytest.raises(PaidMeanwhile):
        approve(proposed, house)
    assert not Sending.objects.within(house.scope).exists()


def test_one_that_fell_away_is_told_so(house, proposed):
    write_off(invoice=proposed.invoice, reason="Gone", at=AFTER_FIFTY_DAYS, by=house.office)
    propose_reminders(business=house.business, at=AFTER_FIFTY_DAYS)
    with pytest.raises(AlreadyDecided, match="fell away"):
        drop_reminder(reminder=proposed, because="Rang", at=AFTER_FIFTY_DAYS, by=house.office)


def test_dropping_keeps_the_reason(house, proposed):
    with pytest.raises(WhyMissing):
        drop_reminder(reminder=proposed, because=" ", at=AFTER_FIFTY_DAYS, by=house.office)
    row = drop_reminder(reminder=proposed, because="They rang", at=AFTER_FIFTY_DAYS, by=house.office)
    assert (row.state, row.dropped_because, row.pdf) == ("dropped", "They rang", None)


def test_a_part_payment_is_left_out_of_the_interest_from_its_day(house, rules, proposed):
    charge_interest(house, rules)
    write_off(
        invoice=proposed.invoice,
        reason="Agreed",
        amount=D(600),
        at=AFTER_FIFTY_DAYS - timedelta(days=39),
        by=house.office,
    )
    approve(proposed, house)
    row = Reminder.objects.within(house.scope).get()
    assert (row.open_amount, row.interest) == (400, D("6.05"))
