"""A week is planned on the real engine's roads: its drives are those of the shortest paths, stretched as said."""

from datetime import UTC, datetime
from decimal import Decimal

import pytest

from farms.models import Farm
from tests.factories import MONDAY, make_farm, make_house, wanted
from tests.services.processes import free_port
from visits.domain.planning.audit import audit_week
from visits.domain.planning.solve_limits import SolveLimits
from visits.models import RoadLeg
from visits.roads.roads_server import roads_server
from visits.selectors.travel_note import travel_note
from visits.services.ask_week_plan import ask_week_plan
from visits.services.think_week_plan import think_week_plan

pytestmark = [pytest.mark.roads, pytest.mark.django_db]
SUNDAY_EVENING = datetime(2026, 3, 1, 19, 5, tzinfo=UTC)
BASE, FARMS = 40, (3, 17, 55, 70)


@pytest.fixture
def house(network):
    """A van and four farms at nodes of the network."""
    house = make_house()
    place(house.van, "base_", network.nodes[BASE])
    for node in FARMS:
        farm = make_farm(house.business, f"Farm {node}", by=house.owner)
        place(farm, "", network.nodes[node])
        wanted(farm)
    return house


def place(row, prefix, point):
    for name, degrees in zip(("latitude", "longitude"), point, strict=True):
        setattr(row, prefix + name, Decimal(str(degrees)))
    row.save()


def planned(house, at=SUNDAY_EVENING):
    plan = ask_week_plan(business=house.business, monday=MONDAY, at=at, by=house.owner)
    return think_week_plan(week_plan=plan, limits=SolveLimits(iterations=50), at=at)


def test_every_drive_of_the_plan_is_a_shortest_path_with_the_trailer(house, network, roads_address, settings):
    settings.ROADS_URL = roads_address
    plan = planned(house)
    assert audit_week(plan.problem, plan.plan) == []
    seconds, metres = network.shortest()
    travel, nodes = plan.problem["travel"], [BASE, *FARMS]
    for row, a in enumerate(nodes):
        for column, b in enumerate(nodes):
            if a != b:
                minutes = seconds[a, b] / 60 * 1.15 + 2
                assert travel["minutes"][row][column] == pytest.approx(minutes, rel=0.001, abs=0.06)
                assert travel["km"][row][column] == pytest.approx(metres[a, b] / 1000, rel=0.001, abs=0.002)
    assert plan.travel["counts"] == {"server": 20}
    assert travel_note(plan, house.business.zone).text == "Drives by road, from the roads server."


def test_only_the_drives_of_a_farm_that_moved_are_asked_for_again(house, network, roads_address, settings):
    settings.ROADS_URL = roads_address
    planned(house)
    farm = Farm.objects.within(house.scope).get(name="Farm 3")
    place(farm, "", network.nodes[5])
    later = SUNDAY_EVENING.replace(minute=30)
    plan = planned(house, later)
    rows = RoadLeg.objects.within(house.scope)
    assert (rows.filter(asked_at=SUNDAY_EVENING).count(), rows.filter(asked_at=later).count()) == (20, 8)
    assert plan.travel["counts"] == {"server": 20}


def test_a_farm_off_the_map_is_estimated_and_the_rest_goes_by_road(house, roads_address, settings):
    far = make_farm(house.business, "Over the sea", by=house.owner, latitude=Decimal("54.9"))
    wanted(far)
    settings.ROADS_URL = roads_address
    plan = planned(house)
    assert plan.travel["counts"] == {"server": 20, "estimate": 10}
    assert "10 of 30 estimated" in travel_note(plan, house.business.zone).text


def test_a_dead_server_leaves_the_week_planned_by_estimate_with_a_warning(house, settings):
    settings.ROADS_URL = f"http://127.0.0.1:{free_port()}"
    plan = planned(house)
    assert (plan.state, plan.travel["counts"]) == ("proposed", {"estimate": 20})
    note = travel_note(plan, house.business.zone)
    assert note.text == "Road times could not be had at 19:05; distances estimated."
    assert note.is_warning


def test_what_a_server_said_before_it_died_is_still_used(house, roads_address, settings):
    settings.ROADS_URL = roads_address
    planned(house)
    wanted(make_farm(house.business, "New", by=house.owner))
    RoadLeg.objects.within(house.scope).update(engine=roads_server("http://127.0.0.1:1").key)
    settings.ROADS_URL = "http://127.0.0.1:1"
    plan = planned(house, SUNDAY_EVENING.replace(minute=30))
    assert plan.travel["counts"] == {"server": 20, "estimate": 10}
    assert travel_note(plan, house.business.zone).text == (
        "Road times could not be had at 19:30; distances estimated for 10 of 30 drives."
    )
