"""Every figure of an answer is looked at before it is believed."""

import json

import pytest

from tests.visits.roads.tables import table
from visits.domain.travel.drive import CarLeg
from visits.roads.read_table import read_table
from visits.roads.road_engine import RoadsUnavailable

NAN = json.loads("NaN")
INFINITE = json.loads("Infinity")
HUGE = json.loads("1" + "0" * 400)


def test_a_sound_answer_is_read_cell_by_cell():
    legs = ((CarLeg(0, 0), CarLeg(600.5, 9000.2)), (CarLeg(660, 9500), CarLeg(0, 0)))
    assert read_table(table(), 2, 2) == legs


@pytest.mark.parametrize("name", ["durations", "distances"])
def test_a_null_in_either_grid_is_a_drive_without_a_road(name):
    read = read_table(table(**{name: [[0, None], [1, 0]]}), 2, 2)
    assert read[0][1] is None
    assert read[1][0] is not None


@pytest.mark.parametrize("metres", [1000, 1000.1])
def test_a_place_further_from_the_road_than_a_kilometre_is_off_the_map(metres):
    read = read_table(table(destinations=[{"distance": 0}, {"distance": metres}]), 2, 2)
    assert (read[0][1] is None) is (metres > 1000)
    assert read[1][0] is not None


@pytest.mark.parametrize(
    "spoilt",
    [
        {"durations": [[0, NAN], [1, 0]]},
        {"durations": [[0, INFINITE], [1, 0]]},
        {"distances": [[0, -1], [1, 0]]},
        {"durations": [[0, HUGE], [1, 0]]},
        {"sources": [{"distance": HUGE}, {"distance": 1}]},
        {"durations": [[0, 48 * 3600 + 1], [1, 0]]},
        {"distances": [[0, 5_000_001], [1, 0]]},
        {"durations": [[0, "600"], [1, 0]]},
        {"durations": [[0, True], [1, 0]]},
        {"durations": [[0, 1]]},
        {"durations": [[0, 1], [1]]},
        {"durations": [[0, 1, 2], [1, 0, 2]]},
        {"durations": {"0": [0, 1], "1": [1, 0]}},
        {"durations": None},
        {"distances": [None, [1, 0]]},
        {"sources": [{"distance": 1}]},
        {"sources": [{}, {}]},
        {"sources": ["a", "b"]},
        {"destinations": [{"distance": NAN}, {"distance": 1}]},
        {"destinations": None},
    ],
    ids=lambda spoilt: str(spoilt)[:60],
)
def test_what_is_no_table_of_figures_is_refused_as_a_whole(spoilt):
    with pytest.raises(RoadsUnavailable):
        read_table(table(**spoilt), 2, 2)


@pytest.mark.parametrize("answer", [None, [], "table", 7, {}])
def test_an_answer_of_another_kind_is_refused(answer):
    with pytest.raises(RoadsUnavailable):
        read_table(answer, 2, 2)
