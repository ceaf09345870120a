"""Several who draft the same work at the same moment make one draft, and hold each piece of work once."""

from concurrent.futures import ThreadPoolExecutor
from threading import Barrier

import pytest
from django.db import connections

from invoicing.models import BilledWork, Invoice
from invoicing.services.draft_invoice import draft_invoice
from tests.factories import NOON, make_house, make_prices
from tests.invoicing.services.billing import by_month, worked
from visits.models import Visit

THREADS = 4


@pytest.mark.services  # because: the test database of the embedded form is in memory and knows no waiting
@pytest.mark.django_db(transaction=True)
@pytest.mark.parametrize("is_by_month", [False, True])
def test_the_workers_of_one_farm_do_not_get_in_each_others_way(is_by_month):
    house = make_house()
    make_prices(house.business)
    if is_by_month:
        by_month(house.farm)
    keys = [worked(house, 1, days=days).pk for days in (0, 1)]
    Invoice.objects.within(house.scope).delete()
    together = Barrier(THREADS)

    def draft(number):
        try:
            visit = (
                Visit.objects.within(house.scope).select_related("business", "farm").get(pk=keys[number % 2])
            )
            together.wait()
            return draft_invoice(visit=visit, at=NOON).pk
        finally:
            connections.close_all()

    with ThreadPoolExecutor(THREADS) as pool:
        made = set(pool.map(draft, range(THREADS)))
    drafts = Invoice.objects.within(house.scope)
    assert {draft.pk for draft in drafts} == made
    assert len(made) == (1 if is_by_month else 2)
    held = list(BilledWork.objects.within(house.scope).values_list("key", flat=True))
    assert len(held) == len(set(held)) == 6
    assert sum(draft.net for draft in drafts) == 60
