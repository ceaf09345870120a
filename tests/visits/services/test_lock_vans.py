from django.db import transaction

from tests.factories import make_house, make_van
from visits.services.lock_vans import lock_vans


def test_all_vans_of_the_business_and_of_no_other_are_locked(house):
    second = make_van(house.business, house.owner, "Van 2")
    make_house("Fell & Beck")
    with transaction.atomic():
        assert lock_vans(scope=house.scope) == {house.van.pk: house.van, second.pk: second}
