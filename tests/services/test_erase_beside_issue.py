"""A draft is issued while its farm's drafts are erased, on a real PostgreSQL: the invoice stays, its number too."""

import threading
import time

import pytest
from django.db import connection, transaction

from invoicing.models import Invoice
from invoicing.services.forget_drafts import forget_drafts
from tests.factories import make_house
from tests.invoicing.drafts import plain_draft
from tests.invoicing.services.billing import as_issued

pytestmark = pytest.mark.services
HELD = 0.6


def test_what_is_being_issued_is_waited_for_and_not_deleted(transactional_db):
    house = make_house()
    draft, kept, is_held = plain_draft(house), [], threading.Event()

    def office():
        with transaction.atomic():
            as_issued(house, draft.locked())
            is_held.set()
            time.sleep(HELD)
        connection.close()

    def owner():
        is_held.wait(10)
        kept.append(forget_drafts(farm=house.farm))
        connection.close()

    both = [threading.Thread(target=work) for work in (office, owner)]
    for thread in both:
        thread.start()
    for thread in both:
        thread.join(20)
    assert Invoice.objects.within(house.scope).get().number == "INV-2026-0001"
    assert [(each.drafts, each.invoices) for each in kept] == [(0, 1)]
