from django.db import transaction

from invoicing.services.lock_invoices import lock_invoices
from tests.factories import make_house
from tests.invoicing.issued_papers import issued


def test_they_come_in_the_order_of_their_keys_and_of_one_business(house):
    mine = [issued(house.farm, "1") for _ in range(3)]
    theirs = issued(make_house("Fell & Beck").farm, "1")
    keys = [theirs.pk, mine[2].pk, mine[0].pk]
    with transaction.atomic():
        found = lock_invoices(scope=house.scope, keys=keys)
    assert list(found) == [mine[0].pk, mine[2].pk]
