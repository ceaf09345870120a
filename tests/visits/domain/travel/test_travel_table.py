import json

import pytest
from pyproj import Geod

from visits.domain.planning.read_problem import read_problem
from visits.domain.travel.drive import CarLeg, estimated_drive
from visits.domain.travel.place import Place
from visits.domain.travel.travel_figures import TravelFigures
from visits.domain.travel.travel_source import TravelSource
from visits.domain.travel.travel_table import straight_km, travel_table

USUAL = TravelFigures()
YARD, NEAR, FAR = Place("yard", 54.2, -2.3), Place("near", 54.25, -2.3), Place("far", 54.3, -2.0)
TWIN = Place("twin", 54.25, -2.3)


def table(places, legs=None, source=TravelSource.ESTIMATE):
    return travel_table(places, USUAL, legs or {}, source)


def test_the_straight_line_is_that_of_a_library_that_we_did_not_write():
    metres = Geod(ellps="WGS84").inv(-2.3, 54.2, -2.0, 54.3)[2]  # PROJ
    assert straight_km(YARD, FAR) == straight_km(FAR, YARD) == pytest.approx(metres / 1000, abs=1e-6)


def test_without_a_road_map_every_drive_is_an_estimate():
    made = table([YARD, NEAR, FAR])
    assert made.drives[0][1] == estimated_drive(straight_km(YARD, NEAR), USUAL)
    assert made.marks == ("-ee", "e-e", "ee-")
    assert made.counts() == {TravelSource.ESTIMATE: 6}


def test_a_drive_that_the_map_knows_is_by_road_and_the_others_are_estimated():
    made = table([YARD, NEAR, FAR], {(YARD.key, FAR.key): CarLeg(1800, 31_000)}, TravelSource.SERVER)
    assert (made.drives[0][2].minutes, made.drives[0][2].km) == (30 * 1.15 + 2, 31)
    assert made.drives[2][0] == estimated_drive(straight_km(YARD, FAR), USUAL)
    assert made.marks == ("-es", "e-e", "ee-")
    assert made.counts() == {TravelSource.ESTIMATE: 5, TravelSource.SERVER: 1}


def test_two_farms_on_one_spot_take_getting_away_and_parking_and_a_farm_to_itself_nothing():
    made = table([NEAR, TWIN])
    assert [[drive.minutes for drive in row] for row in made.drives] == [[0, 2], [2, 0]]
    assert made.counts() == {TravelSource.ESTIMATE: 2}


def test_the_planner_reads_it_as_the_contract_has_it():
    places = [YARD, NEAR, FAR]
    problem = {
        "format": "trimops-week-problem/1",
        "timezone": "Europe/London",
        "bases": [{"id": "yard", "lat": 54.2, "lon": -2.3}],
        "sites": [{"id": p.id, "lat": p.latitude, "lon": p.longitude} for p in places[1:]],
        "travel": table(places).as_travel(),
        "shifts": [],
        "jobs": [],
    }
    travel = read_problem(json.dumps(problem)).travel
    drives = table(places).drives
    assert travel.times[0][2] == drives[0][2].minutes * 600
    assert travel.metres[1][2] == drives[1][2].km * 1000
