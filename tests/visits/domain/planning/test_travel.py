"""Travel tables, checked against PROJ (pyproj), a second implementation of geodesics on WGS 84."""

import json

import pytest
from pyproj import Geod

from tests.visits.domain.planning.hand_made import matrix, week
from visits.domain.planning.measures import MOST
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.travel import geodesic_km

ESTIMATE = {"kind": "estimate", "circuity": 1.35, "kmh": 48, "minutes_per_leg": 2}


@pytest.mark.parametrize(
    ("a", "b"),
    [((54.21, -2.31), (54.3, -2.4)), ((0, 0), (0, 179.5)), ((-41.3, 174.8), (60.2, 24.9)), ((5, 5), (5, 5))],
)
def test_geodesics_agree_with_the_reference_library_to_a_tenth_of_a_millimetre(a, b):
    _, _, reference = Geod(ellps="WGS84").inv(a[1], a[0], b[1], b[0])
    assert geodesic_km(a, b) * 1000 == pytest.approx(reference, abs=1e-4)


def test_an_estimate_is_geodesic_times_circuity_at_a_steady_speed_plus_minutes_per_leg():
    travel = read_problem(json.dumps(week(travel=ESTIMATE))).travel
    _, _, reference = Geod(ellps="WGS84").inv(-2.3, 54.2, -2.4, 54.3)
    km = reference / 1000 * 1.35
    assert travel.metres[0][1] == round(km * 1000)
    assert travel.times[0][1] == round((km / 48 * 60 + 2) * 600)


def test_a_place_to_itself_is_nothing_but_two_farms_on_one_spot_take_the_minutes_per_leg():
    travel = read_problem(json.dumps(week(travel=ESTIMATE))).travel
    assert (travel.times[1][1], travel.times[1][2], travel.metres[1][2]) == (0, 1200, 0)


def test_a_crawl_that_would_take_for_ever_is_a_very_long_drive():
    travel = read_problem(json.dumps(week(travel=ESTIMATE | {"kmh": 1e-300}))).travel
    assert travel.times[0][1] == MOST


def test_a_matrix_keeps_its_two_ways_apart_in_any_order_and_forgets_its_diagonal():
    table = matrix()
    table["places"] = table["places"][::-1]
    table["minutes"][0] = [9, 1, 2, 3]
    travel = read_problem(json.dumps(week(travel=table))).travel
    assert (travel.times[3][3], travel.times[3][2], travel.times[3][0]) == (0, 600, 1800)
    assert travel.times[0][3] == 60 * 600
