import pytest

from visits.domain.own_figures import FigureRefused
from visits.domain.planning_figures import PlanningFigures
from visits.domain.travel.travel_figures import TravelFigures


@pytest.mark.parametrize(
    "own",
    [
        {"circuity": 0.99},
        {"kmh": 0},
        {"lane_kmh": 0},
        {"main_road_kmh": 0},
        {"trailer": 0},
        {"own_drives": 0},
        {"lane_km": 21},
        {"main_road_after_km": 3.9},
    ],
)
def test_a_figure_that_no_road_or_van_has_is_refused_by_its_name(own):
    with pytest.raises(
        FigureRefused, match=next(iter(own)).replace("lane_km", "(lane_km|main_road_after_km)")
    ):
        PlanningFigures.from_overrides(own)


@pytest.mark.parametrize("own", [{"kmh": 20}, {"kmh": 75}, {"circuity": 1, "kmh": 48, "minutes_per_leg": 0}])
def test_figures_that_were_set_when_there_was_but_one_speed_still_hold(own):
    figures = PlanningFigures.from_overrides(own)
    assert {name: getattr(figures, name) for name in own} == own


def test_the_usual_figures_lie_within_what_is_published():
    usual = TravelFigures()
    assert 1.2 <= usual.circuity <= 1.417
    # Great Britain, with a trailer: 50 mph on a single carriageway (the Highway Code, rule 124, from memory).
    assert usual.main_road_kmh <= 50 * 1.609344
    # A car's 60 mph against 50 with a trailer is the most that the limits make of it.
    assert 1 <= usual.trailer <= 60 / 50
