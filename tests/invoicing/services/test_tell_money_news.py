"""What another program hears of the money."""

import json
from datetime import timedelta
from decimal import Decimal

import pytest

from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.issue_invoice import issue_invoice
from invoicing.services.note_payment import note_payment
from invoicing.services.take_back_payment import take_back_payment
from tests.factories import (
    NOON,
    TUESDAY_TEN,
    blocked_foot,
    finish,
    make_house,
    make_prices,
    put_down,
    under_way,
)
from tests.invoicing.issued_papers import issued
from tests.invoicing.services.test_note_payment import money, note
from tests.trimops.outbox.webhooks import make_webhook
from trimops.outbox.models import Outgoing

pytestmark = pytest.mark.django_db


@pytest.fixture
def house():
    house = make_house()
    make_webhook(house)
    return house


def heard(house):
    rows = Outgoing.objects.within(house.scope).filter(channel="webhook").order_by("id")
    return [told for row in rows if (told := json.loads(row.body))["type"].startswith("invoice")]


def test_an_issued_invoice_is_told_with_its_number_days_and_sums(house):
    make_prices(house.business)
    visit = under_way(house.farm, house.van)
    put_down(visit, house.cow, blocked_foot())
    finish(visit, house.trimmer)
    draft = draft_invoice(visit=visit, at=TUESDAY_TEN + timedelta(hours=5))
    assert heard(house) == []
    row = issue_invoice(invoice=draft, at=TUESDAY_TEN + timedelta(hours=6), by=house.office)
    (told,) = heard(house)
    assert told["type"] == "invoice.issued"
    assert told["data"] == {
        "invoice": row.pk,
        "kind": "invoice",
        "number": row.number,
        "issued_on": str(row.issued_on),
        "due_on": str(row.due_on),
        "currency": "GBP",
        "net": str(row.net),
        "tax": str(row.tax),
        "payable": str(row.payable),
        "settled": str(row.settled),
        "visit": visit.pk,
        "farm": {"id": house.farm.pk, "name": house.farm.name},
    }
    assert Decimal(told["data"]["payable"]) > 0


def test_an_invoice_is_paid_when_nothing_of_it_is_open_any_more(house):
    bill = issued(house.farm, "100")
    note(house, "40", {bill.pk: Decimal(40)})
    assert heard(house) == []
    note(house, "60", {bill.pk: Decimal(60)})
    (told,) = heard(house)
    assert (told["type"], Decimal(told["data"]["settled"])) == ("invoice.paid", 100)


def test_paid_taken_back_and_paid_again_is_told_twice(house):
    bill = issued(house.farm, "100")
    first = note(house, "100", {bill.pk: Decimal(100)})
    take_back_payment(payment=first, because="Bounced", at=NOON + timedelta(hours=1), by=house.office)
    later = money(house, "100", {bill.pk: Decimal(100)})
    note_payment(money=later, at=NOON + timedelta(hours=2), by=house.office)
    assert [told["type"] for told in heard(house)] == ["invoice.paid"] * 2
