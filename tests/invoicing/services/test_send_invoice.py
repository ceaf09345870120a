from datetime import timedelta

import pytest

from farms.models import Payer
from invoicing.models import FarmTerms, Invoice, Sending
from invoicing.services.make_invoice_link import NotIssuedYet
from invoicing.services.queue_sending import AddressMakesNoSense, NoAddress
from invoicing.services.send_invoice import send_invoice
from tests.factories import MONDAY, NOON
from tests.invoicing.issued_row import issued_row
from trimops.outbox.models import Outgoing

SOON, LATER = NOON + timedelta(seconds=20), NOON + timedelta(minutes=2)


def send(house, invoice, at=NOON, **asked):
    return send_invoice(invoice=invoice, at=at, by=house.office, **asked)


@pytest.fixture
def invoice(house):
    house.farm.email = "farm@example.invalid"
    house.farm.save()
    return issued_row(house)


def test_it_goes_to_the_farm_unless_it_says_otherwise(house, invoice):
    assert [row.outgoing.address for row in send(house, invoice)] == ["farm@example.invalid"]
    house.farm.payer = Payer.objects.create(business=house.business, name="Estate", email="e@example.invalid")
    house.farm.save()
    assert [row.outgoing.address for row in send(house, invoice, LATER)] == ["e@example.invalid"]
    to = ["a@example.invalid", "b@example.invalid", "a@example.invalid"]
    FarmTerms.objects.create(business=house.business, farm=house.farm, send_to=to, sends_xml=True)
    rows = send(house, invoice, LATER + timedelta(minutes=2))
    assert [row.outgoing.address for row in rows] == to[:2]
    assert all(row.with_xml and row.with_link for row in rows)


def test_what_the_person_chose_and_wrote_holds(house, invoice):
    asked = {"addresses": ["x@example.invalid"], "with_xml": True, "subject": "Bill", "body": "Hello."}
    (row,) = send(house, invoice, **asked, with_link=False)
    assert (row.outgoing.address, row.outgoing.subject) == ("x@example.invalid", "Bill")
    assert row.outgoing.body == "Hello.\n"
    assert (row.with_xml, row.with_link, row.outgoing.written_by) == (True, False, house.office)


def test_xml_that_there_is_none_of_is_not_promised(house):
    (row,) = send(house, issued_row(house, has_xml=False), addresses=["x@example.invalid"], with_xml=True)
    assert not row.with_xml


def test_pressed_twice_it_goes_once(house, invoice):
    first = send(house, invoice)
    assert [row.pk for row in send(house, invoice, SOON)] == [row.pk for row in first]
    Outgoing.objects.within(house.scope).update(state="went")
    assert [row.pk for row in send(house, invoice, SOON)] == [row.pk for row in first]
    assert len(send(house, invoice, SOON, addresses=["FARM@example.invalid", "b@example.invalid"])) == 2
    assert Sending.objects.within(house.scope).count() == 2
    assert send(house, invoice, LATER)[0].pk != first[0].pk


def test_what_waits_still_is_not_queued_beside_itself(house, invoice):
    first = send(house, invoice)
    assert [row.pk for row in send(house, invoice, NOON + timedelta(hours=3))] == [row.pk for row in first]


def test_a_refused_one_may_be_sent_anew_at_once(house, invoice):
    first = send(house, invoice)
    Outgoing.objects.within(house.scope).update(state="failed")
    assert send(house, invoice, SOON)[0].pk != first[0].pk


def test_without_an_address_it_says_where_to_add_one(house):
    with pytest.raises(NoAddress, match="put one down in its terms"):
        send(house, issued_row(house))


def test_one_bad_address_holds_back_all(house, invoice):
    with pytest.raises(AddressMakesNoSense):
        send(house, invoice, addresses=["a@example.invalid", "nobody"])
    assert not Sending.objects.within(house.scope).exists()


def test_a_draft_is_not_sent(house):
    draft = Invoice(business=house.business, farm=house.farm, currency="GBP", drafted_at=NOON)
    draft.tax_point = MONDAY
    draft.save()
    with pytest.raises(NotIssuedYet):
        send(house, draft)
