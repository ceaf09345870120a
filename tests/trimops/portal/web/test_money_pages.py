"""What a farm sees of its money: to pay, overdue, credited, paid; with the right to, and of its own farm alone."""

from datetime import timedelta
from decimal import Decimal
from html import unescape

import pytest
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext
from django.urls import reverse
from django.utils import timezone

from farms.models import FarmAccess
from farms.services.give_farm_rights import give_farm_rights
from tests.factories import make_farm, make_house
from tests.invoicing.issued_row import CII, PDF, UBL, issued_row
from trimops.accounts.roles import FarmRight


@pytest.fixture
def house(db):
    house = make_house()
    let_see(house, {FarmRight.SEES_MONEY})
    return house


@pytest.fixture
def client(house):
    client = Client()
    client.force_login(house.client)
    return client


def let_see(house, rights):
    give_farm_rights(access=FarmAccess.objects.within(house.scope).get(), rights=rights)


def page(client):
    return unescape(client.get(reverse("portal_money")).content.decode())


def days(number):
    return timezone.now().date() + timedelta(days=number)


def test_it_says_what_is_to_pay_what_of_it_is_late_and_how(house, client):
    late = issued_row(house, "INV-2026-0001", gross="480", due_on=days(-1))
    issued_row(house, "INV-2026-0002", gross="120", settled=Decimal(20), due_on=days(1))
    issued_row(house, "INV-2026-0003", gross="60", settled=Decimal(60), is_open=False)
    issued_row(house, "CN-2026-0001", gross="24", kind="credit_note", corrects=late, reason="Two too many")
    shown = page(client)
    assert "<h1>£556.00 to pay, £480.00 overdue</h1>" in shown
    for words in ("GB33 BUKB", "RF18539007547034", "−£24.00", "£100.00 left", "credit note on INV-2026-0001"):
        assert words in shown
    assert shown.index("INV-2026-0001 (PDF)") < shown.index("INV-2026-0002 (PDF)") < shown.index("All papers")


def test_when_all_is_paid_it_says_so(house, client):
    assert "<h1>No invoice yet</h1>" in page(client)
    first = issued_row(house, settled=Decimal(120), is_open=False)
    assert "<h1>Nothing to pay</h1>" in page(client)
    issued_row(house, "CN-2026-0001", gross="24", kind="credit_note", corrects=first, reason="Too many")
    assert "<h1>Nothing to pay, £24.00 to your good</h1>" in page(client)


def test_the_papers_are_those_that_were_kept(house, client):
    invoice = issued_row(house)
    assert client.get(reverse("portal_invoice_paper", args=[invoice.pk])).content == PDF
    for form, content in (("ubl", UBL), ("cii", CII)):
        assert client.get(reverse("portal_invoice_xml", args=[invoice.pk, form])).content == content
    assert client.get(reverse("portal_invoice_xml", args=[invoice.pk, "nonsense"])).status_code == 404
    bare = issued_row(house, "INV-2026-0002", has_xml=False)
    assert client.get(reverse("portal_invoice_xml", args=[bare.pk, "ubl"])).status_code == 404


def test_another_farms_invoice_is_not_there(house, client):
    other = issued_row(house, gross="987", farm=make_farm(house.business, "High Croft", by=house.owner))
    theirs = issued_row(make_house("Far Side"))
    assert "987" not in page(client)
    for invoice in (other, theirs):
        assert client.get(reverse("portal_invoice_paper", args=[invoice.pk])).status_code == 404
        assert client.get(reverse("portal_invoice_xml", args=[invoice.pk, "ubl"])).status_code == 404


def test_without_the_right_to_see_money_nothing_is_shown(house, client):
    invoice = issued_row(house)
    let_see(house, set(FarmRight) - {FarmRight.SEES_MONEY})
    assert client.get(reverse("portal_money")).status_code == 403
    assert client.get(reverse("portal_invoice_xml", args=[invoice.pk, "ubl"])).status_code == 403


def test_more_invoices_take_no_more_queries(house, client):
    page(client)  # because: a sign-in notes at its first page when it began
    asked = []
    for numbers in (("1", "2"), ("3", "4", "5", "6")):
        for number in numbers:
            issued_row(house, f"INV-{number}")
        with CaptureQueriesContext(connection) as queries:
            page(client)
        asked.append(len(queries))
    assert asked[0] == asked[1]
