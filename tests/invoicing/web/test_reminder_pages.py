"""The office looks at each reminder, approves or drops it, by payer."""

from datetime import date, timedelta

import pytest
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from farms.models import Payer
from invoicing.models import MoneyRules, ReferenceRate, Reminder, Sending
from invoicing.services.propose_reminders import propose_reminders
from tests.factories import make_farm, make_house
from tests.invoicing.booked import booked, line


@pytest.fixture
def house(house):
    MoneyRules.objects.create(business=house.business, reminder_days=[7, 21], charges_interest=True)
    ReferenceRate.objects.create(
        business=house.business, percent="4.25", valid_from=date(2020, 1, 1), source="The bank's page"
    )
    return house


@pytest.fixture
def overdue(house):
    """Two farms of one payer, late by a month."""
    estate = Payer.objects.create(business=house.business, name="The Estate", email="estate@farm.example")
    second = make_farm(house.business, "High Croft", by=house.owner)
    on = timezone.now().date() - timedelta(days=44)
    for farm in (house.farm, second):
        farm.payer = estate
        farm.save()
        booked(farm, line("100", "0", "Z"), on=on)
    return house


def rows(house):
    return Reminder.objects.within(house.scope).order_by("pk")


def look_through(office):
    return office.post(reverse("reminders"), follow=True).content.decode()


def test_what_is_overdue_is_put_forward_by_payer(overdue, office):
    html = look_through(office)
    assert "2 reminders to look at, to 1 payer" in html
    assert html.count("<h2>The Estate: £202.") == 1
    assert not Sending.objects.within(overdue.scope).exists()


def test_those_of_a_payer_are_approved_at_once(overdue, office):
    look_through(office)
    html = office.post(
        reverse("reminders_approve"), {"reminder": [row.pk for row in rows(overdue)]}, follow=True
    ).content.decode()
    assert "2 approved" in html
    assert "No reminder waits" in html
    assert Sending.objects.within(overdue.scope).count() == 2
    first = rows(overdue).first()
    assert office.get(reverse("reminder_paper", args=[first.pk])).content == bytes(first.pdf)


def test_one_is_looked_at_and_dropped_with_a_reason(overdue, office):
    look_through(office)
    row = rows(overdue).first()
    page = reverse("reminder", args=[row.pk])
    assert "× 12.25 % × 30 / 365 days" in office.get(page).content.decode()
    assert office.get(reverse("reminder_paper", args=[row.pk])).content.startswith(b"%PDF")
    assert office.post(page, {"because": ""}).status_code == 400
    assert "They rang" in office.post(page, {"because": "They rang"}, follow=True).content.decode()
    assert office.post(page, {"because": "Again"}).status_code == 409
    assert "was dropped" in office.get(page).content.decode()


def test_a_rate_that_is_missing_is_said_and_nothing_goes_out(overdue, office):
    ReferenceRate.objects.within(overdue.scope).delete()
    look_through(office)
    html = office.post(
        reverse("reminders_approve"), {"reminder": rows(overdue).first().pk}, follow=True
    ).content.decode()
    assert "No reference rate is known" in html
    assert not Sending.objects.within(overdue.scope).exists()


def test_another_business_can_do_nothing_with_it(overdue):
    propose_reminders(business=overdue.business, at=timezone.now())
    stranger = Client()
    stranger.force_login(make_house("Elsewhere Trimming").owner)
    key = rows(overdue).first().pk
    stranger.post(reverse("reminders_approve"), {"reminder": key})
    assert stranger.get(reverse("reminder", args=[key])).status_code == 404
    assert rows(overdue).first().state == "proposed"


def test_rates_are_put_down_and_wrong_ones_refused(house, office):
    page = reverse("reference_rates")
    assert office.post(page, {"valid_from": "2026-01-01", "percent": "425", "source": "x"}).status_code == 400
    html = office.post(
        page, {"valid_from": "2026-01-01", "percent": "3.75", "source": "A page"}, follow=True
    ).content.decode()
    assert "3.75 % since Thu 1 Jan 2026" in html
