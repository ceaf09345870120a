"""A week's drives come from what is kept, without asking anybody."""

import json

import pytest

from tests.factories import MONDAY, NOON, make_farm, wanted
from tests.visits.roads.grid_map import grid_map
from visits.domain.planning.read_problem import read_problem
from visits.domain.travel.place import Place
from visits.domain.travel.travel_figures import TravelFigures
from visits.domain.travel.travel_source import TravelSource
from visits.models import RoadLeg
from visits.selectors.places_in_work import places_in_work
from visits.selectors.week_problem import week_problem
from visits.selectors.week_travel import places_of, story_of_problem, week_travel
from visits.services.learn_roads import learn_roads

USUAL = TravelFigures()


@pytest.fixture
def roads(settings):
    with grid_map() as (asked, roads):
        settings.ROADS_URL = asked.address
        roads.asked = asked.paths
        yield roads


def test_bases_come_before_sites_as_the_problem_has_them():
    problem = {
        "bases": [{"id": "van-1", "lat": 54, "lon": -2.4}],
        "sites": [{"id": "farm-1", "lat": 54.1, "lon": -2.3, "hygiene": 1}],
    }
    assert places_of(problem) == [Place("van-1", 54, -2.4), Place("farm-1", 54.1, -2.3)]
    assert places_of({"jobs": "none"}) == []


def test_reading_a_week_asks_nobody(house, roads, django_assert_num_queries):
    places = places_in_work(house.scope)
    with django_assert_num_queries(1):
        table = week_travel(house.scope, places, USUAL)
    assert roads.asked == []
    assert set(table.counts()) <= {TravelSource.ESTIMATE}


def test_the_week_problem_takes_the_drives_that_are_kept(house, roads):
    wanted(house.farm)
    roads.seconds = 1200
    learn_roads(business=house.business, places=places_in_work(house.scope), at=NOON)
    problem = week_problem(house.business, MONDAY, NOON)
    assert problem["travel"]["minutes"] == [[0, 25], [25, 0]]
    assert read_problem(json.dumps(problem)).travel.times == ((0, 15_000), (15_000, 0))
    assert story_of_problem(house.scope, problem, USUAL, NOON)["counts"] == {"server": 2}


def test_a_farm_that_moved_is_estimated_until_it_is_asked_for(house, roads):
    wanted(house.farm)
    learn_roads(business=house.business, places=places_in_work(house.scope), at=NOON)
    house.farm.latitude += 1
    house.farm.save()
    story = story_of_problem(house.scope, week_problem(house.business, MONDAY, NOON), USUAL, NOON)
    assert story["counts"] == {"estimate": 2}


def test_a_visit_that_is_asked_for_has_its_drives_asked_for_too(
    house, roads, django_capture_on_commit_callbacks
):
    farm = make_farm(house.business, "High Croft", by=house.owner)
    with django_capture_on_commit_callbacks(execute=True):
        wanted(farm)
    assert RoadLeg.objects.within(house.scope).count() == 2
    assert len(roads.asked) == 1


def test_places_in_work_are_bases_of_active_vans_and_farms_with_a_visit_to_come(house):
    make_farm(house.business, "Idle", by=house.owner)
    wanted(house.farm)
    assert [place.id for place in places_in_work(house.scope)] == [
        f"van-{house.van.pk}",
        f"farm-{house.farm.pk}",
    ]
