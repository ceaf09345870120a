"""Where drives come from stands on the figures page, and below the sums of a week."""

from datetime import UTC, datetime

import pytest
from django.urls import reverse

from tests.factories import MONDAY, make_house, wanted
from tests.visits.roads.grid_map import grid_map
from visits.domain.planning.solve_limits import SolveLimits
from visits.selectors.places_in_work import places_in_work
from visits.services.ask_week_plan import ask_week_plan
from visits.services.learn_roads import learn_roads
from visits.services.think_week_plan import think_week_plan

pytestmark = pytest.mark.django_db
SUNDAY_EVENING = datetime(2026, 3, 1, 19, 5, tzinfo=UTC)


@pytest.fixture
def house():
    house = make_house()
    wanted(house.farm)
    return house


@pytest.fixture
def page(house, client):
    client.force_login(house.owner)

    def read(name, query=""):
        answer = client.get(reverse(name) + query)
        assert answer.status_code == 200
        return " ".join(answer.content.decode().replace("&nbsp;", " ").split())

    return read


@pytest.fixture
def roads(settings):
    with grid_map() as (asked, roads):
        settings.ROADS_URL = asked.address
        yield roads


def learn(house):
    learn_roads(business=house.business, places=places_in_work(house.scope), at=SUNDAY_EVENING)


def planned(house):
    plan = ask_week_plan(business=house.business, monday=MONDAY, at=SUNDAY_EVENING, by=house.owner)
    think_week_plan(week_plan=plan, limits=SolveLimits(iterations=20), at=SUNDAY_EVENING)
    return f"?week={MONDAY}"


def test_without_a_road_map_the_figures_of_the_estimate_are_told(page):
    told = page("figures")
    assert "Drives are estimated: no road map is set up." in told
    assert "the straight line times 1.35: the first 4 km of a drive at 30 km/h, then 48 km/h" in told


@pytest.mark.usefixtures("roads")
def test_the_map_in_use_and_what_is_kept_of_it_are_told(house, page):
    learn(house)
    told = page("figures")
    assert "from the roads server: 2 drives are kept, the newest asked for on Sun 1 Mar, 19:05" in told
    assert "could not be had" not in told


def test_a_map_that_failed_is_told_with_its_reason(house, page, roads):
    roads.is_down = True
    learn(house)
    told = page("figures")
    assert "could not be had on Sun 1 Mar, 19:05: the roads server answered with status 500" in told


def test_an_address_that_is_none_is_told_and_nothing_of_it_shown(page, settings):
    settings.ROADS_URL = "me:secret@roads.example"
    told = page("figures")
    assert "cannot be used: the address of the roads server must look like http://host:port" in told
    assert "secret" not in told


@pytest.mark.usefixtures("roads")
def test_a_week_planned_by_road_says_so(house, page):
    assert "Drives by road, from the roads server." in page("this_week", planned(house))


def test_a_week_planned_while_the_map_was_out_of_order_warns(house, page, roads):
    roads.is_down = True
    told = page("this_week", planned(house))
    assert "Road times could not be had at 19:05; distances estimated." in told
