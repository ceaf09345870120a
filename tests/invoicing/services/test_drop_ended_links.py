from datetime import timedelta

import pytest

from invoicing.models import InvoiceLink
from invoicing.services.drop_ended_links import drop_ended_links
from tests.factories import NOON, make_house
from tests.invoicing.issued_row import issued_row

DAY = timedelta(days=1)


@pytest.mark.django_db
def test_links_that_ended_or_were_closed_before_go_and_the_invoice_stays():
    house = make_house()
    invoice = issued_row(house)
    told = {"business": house.business, "invoice": invoice, "made_at": NOON - 90 * DAY}
    ends = [(NOON - DAY, None), (NOON + DAY, NOON - DAY), (NOON + DAY, None)]
    *_, kept = [
        InvoiceLink.objects.create(secret_hash=str(number), expires_at=expires, closed_at=closed, **told)
        for number, (expires, closed) in enumerate(ends)
    ]
    assert drop_ended_links(scope=house.scope, before=NOON) == 2
    assert InvoiceLink.objects.within(house.scope).get() == kept
