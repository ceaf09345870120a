"""What no farm and no van can ask for any more is forgotten."""

from datetime import timedelta
from decimal import Decimal

import pytest

from farms.services.save_farm import save_farm
from tests.factories import NOON, make_house
from tests.visits.roads.grid_map import grid_map
from visits.domain.travel.place import Place
from visits.models import RoadLeg, RoadTrouble
from visits.services.learn_roads import learn_roads
from visits.services.sweep_roads import sweep_roads
from visits.tasks import sweep_roads_task


@pytest.fixture
def roads(settings):
    with grid_map() as (asked, roads):
        settings.ROADS_URL = asked.address
        yield roads


def learn(house):
    farm, van = house.farm, house.van
    places = [
        Place("farm", float(farm.latitude), float(farm.longitude)),
        Place("van", float(van.base_latitude), float(van.base_longitude)),
    ]
    return learn_roads(business=house.business, places=places, at=NOON)


def sweep(house, after=timedelta(0)):
    return sweep_roads(scope=house.scope, at=NOON + after)


@pytest.mark.usefixtures("roads")
def test_drives_between_places_that_stand_are_kept(house):
    learn(house)
    assert sweep(house) == 0
    assert RoadLeg.objects.within(house.scope).count() == 2


@pytest.mark.usefixtures("roads")
def test_a_farm_that_has_moved_loses_its_old_drives(house):
    learn(house)
    house.farm.latitude += Decimal("0.01")
    save_farm(farm=house.farm, at=NOON, by=house.owner)
    assert sweep(house) == 2


@pytest.mark.usefixtures("roads")
def test_a_base_that_has_moved_loses_its_old_drives(house):
    learn(house)
    house.van.base_longitude += Decimal("0.01")
    house.van.save()
    assert sweep(house) == 2


@pytest.mark.usefixtures("roads")
def test_a_farm_or_van_that_is_given_up_loses_its_drives(house):
    learn(house)
    house.farm.is_active = False
    save_farm(farm=house.farm, at=NOON, by=house.owner)
    assert sweep(house) == 2


@pytest.mark.usefixtures("roads")
def test_an_answer_of_half_a_year_ago_goes(house):
    learn(house)
    assert sweep(house, timedelta(days=180)) == 0
    assert sweep(house, timedelta(days=181)) == 2


def test_what_another_map_said_goes_with_its_trouble(house, roads, settings):
    learn(house)
    roads.is_down = True
    learn_roads(business=house.business, places=[Place("a", 1, 1), Place("b", 2, 2)], at=NOON)
    assert RoadTrouble.objects.within(house.scope).exists()
    settings.ROADS_URL += "/other"
    assert sweep(house) == 2
    assert not RoadTrouble.objects.within(house.scope).exists()


@pytest.mark.usefixtures("roads")
def test_drives_are_kept_while_no_map_is_set_up_for_a_time(house, settings):
    learn(house)
    settings.ROADS_URL = ""
    assert sweep(house) == 0


@pytest.mark.usefixtures("roads")
def test_one_business_is_swept_at_a_time_by_its_own_job(house):
    theirs = make_house("Fell & Beck")
    learn(house), learn(theirs)
    for each in (house, theirs):
        each.van.base_longitude += Decimal("0.01")
        each.van.save()
    assert sweep(house) == 2
    assert RoadLeg.objects.within(theirs.scope).count() == 2
    sweep_roads_task(business_id=theirs.business.pk)
    assert not RoadLeg.objects.within(theirs.scope).exists()
