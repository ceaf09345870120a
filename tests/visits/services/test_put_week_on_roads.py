"""Before a week is thought about its drives come from the road map, or are estimated and said to be."""

from datetime import UTC, datetime
from decimal import Decimal

import pytest

from tests.factories import MONDAY, make_farm, wanted
from tests.visits.roads.grid_map import grid_map
from visits.domain.planning.audit import audit_week
from visits.models import WeekPlan
from visits.services.ask_week_plan import ask_week_plan
from visits.services.put_week_on_roads import put_week_on_roads
from visits.services.set_figures import OwnFigures, set_figures

SUNDAY_EVENING = datetime(2026, 3, 1, 19, 5, tzinfo=UTC)


@pytest.fixture
def week_plan(house):
    wanted(house.farm)
    wanted(make_farm(house.business, "High Croft", by=house.owner, latitude=Decimal("54.2")))
    return ask_week_plan(business=house.business, monday=MONDAY, at=SUNDAY_EVENING, by=house.owner)


@pytest.fixture
def roads(settings):
    with grid_map() as (asked, roads):
        settings.ROADS_URL = asked.address
        yield roads


def stored(week_plan):
    return WeekPlan.objects.within(week_plan.scope).get(pk=week_plan.pk)


def test_a_problem_as_asked_holds_a_matrix_by_estimate(week_plan):
    travel = week_plan.problem["travel"]
    assert travel["kind"] == "matrix"
    assert travel["places"][0].startswith("van-")
    assert travel["minutes"][0][0] == 0 < travel["minutes"][0][1]


def test_drives_by_road_are_put_into_the_problem_and_their_source_is_remembered(week_plan, roads):
    roads.seconds, roads.metres = 1200, 17_000
    put_week_on_roads(week_plan=week_plan, at=SUNDAY_EVENING)
    travel, story = stored(week_plan).problem["travel"], stored(week_plan).travel
    assert travel["minutes"] == [[0, 25, 25], [25, 0, 25], [25, 25, 0]]  # 20 min x 1.15 + 2
    assert travel["km"][0] == [0, 17, 17]
    assert (story["source"], story["counts"], story["marks"]) == (
        "server",
        {"server": 6},
        ["-ss", "s-s", "ss-"],
    )
    assert "failed_at" not in story


def test_a_map_that_fails_leaves_the_estimate_and_says_when_and_why(week_plan, roads):
    before = week_plan.problem["travel"]
    roads.is_down = True
    put_week_on_roads(week_plan=week_plan, at=SUNDAY_EVENING)
    assert stored(week_plan).problem["travel"] == before
    story = stored(week_plan).travel
    assert story["counts"] == {"estimate": 6}
    assert datetime.fromisoformat(story["failed_at"]) == SUNDAY_EVENING
    assert story["why"] == "the roads server answered with status 500"


def test_a_drive_that_the_map_does_not_know_is_estimated(week_plan, roads):
    before = week_plan.problem["travel"]
    roads.no_road = True
    put_week_on_roads(week_plan=week_plan, at=SUNDAY_EVENING)
    assert stored(week_plan).problem["travel"] == before
    assert stored(week_plan).travel["counts"] == {"estimate": 6}
    assert "failed_at" not in stored(week_plan).travel


def test_an_address_that_is_none_is_said_like_a_failure(week_plan, settings):
    settings.ROADS_URL = "roads.example"
    put_week_on_roads(week_plan=week_plan, at=SUNDAY_EVENING)
    assert "http://host:port" in stored(week_plan).travel["why"]


def test_without_a_road_map_the_plan_remembers_that_it_is_an_estimate(week_plan):
    put_week_on_roads(week_plan=week_plan, at=SUNDAY_EVENING)
    story = stored(week_plan).travel
    assert (story["source"], story["counts"]) == ("estimate", {"estimate": 6})
    assert "failed_at" not in story


def test_a_business_stretches_the_drives_by_its_own_figure(week_plan, roads, house):
    roads.seconds = 1200
    own = {"trailer": 1, "own_drives": 1.5, "minutes_per_leg": 0}
    set_figures(business=house.business, figures=OwnFigures({}, {}, own))
    put_week_on_roads(week_plan=week_plan, at=SUNDAY_EVENING)
    assert stored(week_plan).problem["travel"]["minutes"][0] == [0, 30, 30]


def test_doing_it_again_changes_nothing(week_plan, roads):
    put_week_on_roads(week_plan=week_plan, at=SUNDAY_EVENING)
    first = stored(week_plan)
    put_week_on_roads(week_plan=week_plan, at=SUNDAY_EVENING)
    assert (stored(week_plan).problem, stored(week_plan).travel) == (first.problem, first.travel)


def test_a_week_planned_by_road_keeps_the_rules(house, roads, proposed):
    roads.seconds = 1800
    wanted(house.farm)
    plan = proposed(SUNDAY_EVENING)
    assert plan.state == "proposed"
    assert audit_week(plan.problem, plan.plan) == []
    (stop,) = [stop for shift in plan.plan["shifts"] for stop in shift["stops"]]
    assert stop["travel_minutes"] == 36.5  # 30 x 1.15 + 2


def test_a_problem_without_places_is_left_as_it_is(house, week_plan):
    week_plan.problem = {"format": "trimops-week-problem/1", "jobs": "none"}
    assert put_week_on_roads(week_plan=week_plan, at=SUNDAY_EVENING).problem["jobs"] == "none"
