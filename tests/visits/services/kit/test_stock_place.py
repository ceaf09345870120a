from datetime import time

import pytest

from tests.factories import NOON, make_house, make_van, under_way
from visits.models import StockPlace
from visits.services.kit.stock_place import place_of_van, stock_place_of, store_of
from visits.services.save_van import VanHours, save_van

HOURS = VanHours([0], time(8), time(17), 600, 70, 30, time(11), time(14))

pytestmark = pytest.mark.django_db


@pytest.fixture
def house():
    return make_house()


def test_a_place_is_there_when_it_is_asked_for_and_stays_the_same(house):
    assert place_of_van(house.van) == place_of_van(house.van)
    assert store_of(house.scope) == store_of(house.scope)
    assert StockPlace.objects.within(house.scope).count() == 2


def test_a_visit_works_from_its_van_or_from_the_store(house):
    visit = under_way(house.farm, house.van)
    assert stock_place_of(visit) == place_of_van(house.van)
    visit.van = None
    assert stock_place_of(visit) == store_of(house.scope)


def test_a_van_called_like_the_store_gets_another_name(house):
    store_of(house.scope)
    van = make_van(house.business, house.trimmer, name="Store")
    assert place_of_van(van).name == "Store (van)"


def test_two_vans_that_swapped_names_keep_their_places(house):
    first = place_of_van(house.van)
    van = make_van(house.business, house.trimmer, name="Van 2")
    van.name, house.van.name = house.van.name, "Van 9"
    for each in (house.van, van):
        save_van(van=each, hours=HOURS, at=NOON)
    assert (place_of_van(van) != first, place_of_van(van).name) == (True, "Van 1")
    assert (place_of_van(house.van), place_of_van(house.van).name) == (first, "Van 9")
