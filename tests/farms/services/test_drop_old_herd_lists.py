from datetime import timedelta

import pytest

from farms.models import Cow, HerdImport
from farms.services.apply_herd_list import apply_herd_list
from farms.services.drop_old_herd_lists import drop_old_herd_lists
from farms.services.keep_herd_list import keep_herd_list
from tests.factories import NOON, make_house


@pytest.mark.django_db
def test_old_lists_go_applied_or_not_and_their_cows_stay():
    house = make_house()
    for number, days in ((7, 3), (8, 2), (9, 0)):
        kept = keep_herd_list(
            farm=house.farm,
            file_name="herd.csv",
            content=f"Number\n{number}\n".encode(),
            at=NOON - timedelta(days=days),
            by=house.office,
        )
        if number == 7:
            apply_herd_list(herd_import=kept, at=NOON)
    assert drop_old_herd_lists(scope=house.scope, before=NOON) == 2
    assert HerdImport.objects.within(house.scope).get() == kept
    assert Cow.objects.within(house.scope).filter(number="7").exists()
