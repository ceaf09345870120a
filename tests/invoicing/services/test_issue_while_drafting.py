"""A draft is issued and sent, or thrown away, while the job that drafts its visit anew waits for it."""

from concurrent.futures import ThreadPoolExecutor
from threading import Event

import pytest
from django.db import connections

from invoicing.models import Invoice, Sending
from invoicing.services import draft_invoice as drafting
from invoicing.services import issue_and_send as sending
from tests.factories import NOON, make_house, make_prices
from tests.invoicing.services.billing import worked
from visits.models import Visit

LONG_ENOUGH = 20


@pytest.mark.services  # because: the test database of the embedded form is in memory and knows no waiting
@pytest.mark.django_db(transaction=True)
def test_issuing_and_the_job_that_drafts_the_visit_anew_do_not_wait_for_each_other(monkeypatch):
    """The job holds the farm and waits for the draft; the mail's row names the farm while the draft is held."""
    house = make_house()
    make_prices(house.business)
    house.farm.email = "farm@example.invalid"
    house.farm.save()
    visit = worked(house, 1)
    draft = drafting.draft_invoice(visit=visit, at=NOON)
    issued, job_holds_the_farm = Event(), Event()
    send, lock = sending.send_invoice, drafting.lock_draft

    def send_later(**said):
        issued.set()
        assert job_holds_the_farm.wait(LONG_ENOUGH)
        return send(**said)

    def lock_once_issued(**said):
        job_holds_the_farm.set()
        return lock(**said)

    monkeypatch.setattr(sending, "send_invoice", send_later)
    monkeypatch.setattr(drafting, "lock_draft", lock_once_issued)

    def issue():
        try:
            row = Invoice.objects.within(house.scope).select_related("business").get(pk=draft.pk)
            return sending.issue_and_send(invoice=row, at=NOON, by=house.office).number
        finally:
            connections.close_all()

    def draft_anew():
        try:
            assert issued.wait(LONG_ENOUGH)
            row = Visit.objects.within(house.scope).select_related("business", "farm").get(pk=visit.pk)
            return drafting.draft_invoice(visit=row, at=NOON)
        finally:
            connections.close_all()

    with ThreadPoolExecutor(2) as pool:
        number, billed = pool.submit(issue), pool.submit(draft_anew)
        assert number.result()
        assert billed.result().number == number.result()
    assert Sending.objects.within(house.scope).filter(invoice=draft).count() == 1
