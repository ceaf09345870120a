"""Missing drives are asked for once, kept by where the places are, and a map that fails is left alone."""

from datetime import timedelta

import pytest

from tests.factories import NOON, make_house
from tests.services.odd_server import hangs, odd_server
from tests.visits.roads.grid_map import grid_map
from visits.domain.travel.place import Place
from visits.models import RoadLeg, RoadTrouble
from visits.services.learn_roads import learn_roads

YARD, CROFT, FELL = Place("yard", 54.0, -2.4), Place("croft", 54.1, -2.3), Place("fell", 54.2, -2.2)


@pytest.fixture
def roads(settings):
    with grid_map() as (asked, roads):
        settings.ROADS_URL = asked.address
        roads.asked = asked.paths
        yield roads


def legs_of(house):
    return RoadLeg.objects.within(house.scope)


def learn(house, *places, after=timedelta(0)):
    return learn_roads(business=house.business, places=places, at=NOON + after)


def test_without_a_road_map_nothing_is_asked_and_nothing_kept(house):
    assert learn(house, YARD, CROFT) == 0
    assert not legs_of(house).exists()


def test_all_drives_are_kept_as_the_map_says_them(house, roads):
    roads.seconds, roads.metres = 754.26, 9876.5
    assert learn(house, YARD, CROFT, FELL) == 6
    kept = legs_of(house).get(from_place=YARD.key, to_place=FELL.key)
    assert (kept.deciseconds, kept.metres, kept.asked_at) == (7543, 9876, NOON)
    assert len(roads.asked) == 1


def test_what_is_known_is_not_asked_again(house, roads):
    learn(house, YARD, CROFT)
    assert learn(house, YARD, CROFT) == 0
    assert len(roads.asked) == 1


def test_a_new_farm_is_asked_for_alone(house, roads):
    learn(house, YARD, CROFT)
    assert learn(house, YARD, CROFT, FELL, after=timedelta(hours=1)) == 4
    assert len(roads.asked) == 3
    assert set(legs_of(house).filter(asked_at=NOON).values_list("from_place", "to_place")) == {
        (YARD.key, CROFT.key),
        (CROFT.key, YARD.key),
    }


def test_a_farm_that_moves_is_asked_for_anew_and_its_old_drives_are_not_taken_for_it(house, roads):
    learn(house, YARD, CROFT)
    moved = Place(CROFT.id, CROFT.latitude + 0.001, CROFT.longitude)
    assert learn(house, YARD, moved) == 2


def test_another_map_is_asked_for_all_of_it(house, roads, settings):
    learn(house, YARD, CROFT)
    settings.ROADS_URL += "/other"
    assert learn(house, YARD, CROFT) == 2
    assert legs_of(house).count() == 4


def test_an_old_answer_is_asked_for_again_and_replaced(house, roads):
    learn(house, YARD, CROFT)
    roads.seconds = 120
    assert learn(house, YARD, CROFT, after=timedelta(days=89)) == 0
    assert learn(house, YARD, CROFT, after=timedelta(days=91)) == 2
    assert list(legs_of(house).values_list("deciseconds", flat=True)) == [1200, 1200]


def test_that_there_is_no_road_is_kept_too_and_asked_again_after_a_week(house, roads):
    roads.no_road = True
    assert learn(house, YARD, CROFT) == 2
    assert set(legs_of(house).values_list("deciseconds", "metres")) == {(None, None)}
    assert learn(house, YARD, CROFT, after=timedelta(days=6)) == 0
    roads.no_road = False
    assert learn(house, YARD, CROFT, after=timedelta(days=8)) == 2
    assert not legs_of(house).filter(metres__isnull=True).exists()


def test_two_places_on_one_spot_are_asked_for_as_one(house, roads):
    assert learn(house, YARD, CROFT, Place("twin", CROFT.latitude, CROFT.longitude)) == 2


def test_a_map_that_fails_is_remembered_and_left_alone_for_some_minutes(house, roads):
    roads.is_down = True
    assert learn(house, YARD, CROFT) == 0
    trouble = RoadTrouble.objects.within(house.scope).get()
    assert (trouble.at, trouble.why) == (NOON, "the roads server answered with status 500")
    learn(house, YARD, CROFT, after=timedelta(minutes=9))
    assert len(roads.asked) == 1
    roads.is_down = False
    assert learn(house, YARD, CROFT, after=timedelta(minutes=10)) == 2
    assert not RoadTrouble.objects.within(house.scope).exists()


def test_a_second_failure_takes_the_place_of_the_first(house, roads):
    roads.is_down = True
    learn(house, YARD, CROFT)
    learn(house, YARD, CROFT, after=timedelta(minutes=11))
    assert RoadTrouble.objects.within(house.scope).get().at == NOON + timedelta(minutes=11)


def test_a_map_that_hangs_holds_up_for_no_longer_than_it_is_given(house, settings, monkeypatch):
    monkeypatch.setattr("visits.services.learn_roads.SECONDS", 0.3)
    with odd_server(hangs) as asked:
        settings.ROADS_URL = asked.address
        assert learn(house, YARD, CROFT) == 0
    assert RoadTrouble.objects.within(house.scope).get().why == "the roads server is too slow"


def test_what_came_before_a_failure_stands(house, roads, monkeypatch):
    learn(house, YARD, CROFT)
    roads.seconds = -1
    assert learn(house, YARD, CROFT, FELL) == 0
    assert legs_of(house).count() == 2


def test_one_business_knows_nothing_of_anothers_drives(house, roads):
    learn(house, YARD, CROFT)
    theirs = make_house("Fell & Beck")
    assert learn(theirs, YARD, CROFT) == 2
    assert legs_of(house).count() == legs_of(theirs).count() == 2
