import pytest

from visits.domain.own_figures import FigureRefused
from visits.domain.trim_figures import TrimFigures


def test_own_marks_take_the_place_of_the_usual_ones_and_the_others_stay():
    own = TrimFigures.from_overrides(
        {"shortest_wall_mm": 90, "wall_measured_from": " the coronary band ", "feet_lifted": 2}
    )
    assert own == TrimFigures(
        shortest_wall_mm=90, wall_measured_from="the coronary band", toe_angle_from=45, feet_lifted=2
    )


def test_without_own_marks_the_usual_ones_hold():
    assert TrimFigures.from_overrides({}) == TrimFigures()
    assert TrimFigures().feet_lifted == 4


@pytest.mark.parametrize(
    "own",
    [
        {"wall_measured_from": ""},
        {"wall_measured_from": 75},
        {"wall_measured_from": "x" * 41},
        {"shortest_wall_mm": "75"},
        {"shortest_wall_mm": 75.5},
        {"belly_band_minutes": -1},
        {"feet_lifted": 0},
        {"feet_lifted": 5},
        {"toe_angle_to": 40},
        {"horn": 1},
    ],
)
def test_a_mark_that_makes_no_sense_is_refused_by_its_name(own):
    with pytest.raises(FigureRefused, match=next(iter(own))):
        TrimFigures.from_overrides(own)
