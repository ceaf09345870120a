from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from visits.domain.travel.drive import CarLeg, Drive, estimated_drive, road_drive
from visits.domain.travel.travel_figures import TravelFigures

USUAL = TravelFigures()
BARE = replace(USUAL, circuity=1, minutes_per_leg=0)


# Worked by hand: 4 km at 30 km/h are 8 min, 16 km at 48 km/h are 20 min, beyond that 64 km/h.
@pytest.mark.parametrize(("km", "minutes"), [(0, 0), (2, 4), (4, 8), (12, 18), (20, 28), (52, 58), (84, 88)])
def test_lanes_come_before_country_roads_and_those_before_main_roads(km, minutes):
    assert estimated_drive(km, BARE) == Drive(minutes, km)


def test_a_usual_drive_keeps_the_speed_that_is_common_practice():
    """10 to 40 km of road: 40 to 55 km/h without getting away and parking (routing facts 6: no source)."""
    for km in range(15, 41):
        assert 40 <= km / estimated_drive(km, BARE).minutes * 60 <= 55


def test_the_straight_line_is_stretched_by_circuity_and_each_drive_has_its_minutes():
    assert estimated_drive(10, USUAL) == Drive(round(8 + 9.5 / 48 * 60 + 2, 1), 13.5)


def test_a_single_speed_faster_or_slower_than_lanes_and_main_roads_is_kept_to():
    """A business that set `kmh` when it was the only speed: no lane is faster, no main road slower."""
    crawling = replace(BARE, kmh=20)
    assert estimated_drive(10, crawling).minutes == 30
    racing = replace(BARE, kmh=90)
    assert estimated_drive(64, racing).minutes == 8 + 40


speeds = st.floats(5, 130)
figures = st.builds(
    TravelFigures,
    circuity=st.floats(1, 2),
    kmh=speeds,
    minutes_per_leg=st.floats(0, 10),
    lane_km=st.floats(0, 10),
    lane_kmh=speeds,
    main_road_after_km=st.floats(10, 60),
    main_road_kmh=speeds,
    own_drives=st.floats(0.5, 2),
)


@given(figures, st.floats(0, 200), st.floats(0, 200))
def test_a_stop_on_the_way_never_makes_a_drive_shorter(usual, one, other):
    whole, first, second = (estimated_drive(km, usual).minutes for km in (one + other, one, other))
    assert whole <= first + second + 0.2  # two figures rounded to a tenth of a minute


@given(figures, st.floats(0, 300), st.floats(0, 5))
def test_further_never_takes_less(usual, km, more):
    near, far = estimated_drive(km, usual), estimated_drive(km + more, usual)
    assert near.minutes <= far.minutes
    assert near.km <= far.km


def test_by_road_the_cars_time_is_stretched_for_the_trailer_and_the_length_is_not():
    assert road_drive(CarLeg(1200, 15_432), USUAL) == Drive(20 * 1.15 + 2, 15.432)


def test_a_business_stretches_both_kinds_by_its_own_drives_but_not_getting_away():
    own = replace(USUAL, own_drives=1.2)
    assert road_drive(CarLeg(1200, 15_000), own).minutes == pytest.approx(20 * 1.15 * 1.2 + 2, abs=0.05)
    plain = estimated_drive(30, USUAL).minutes - 2
    assert estimated_drive(30, own).minutes == pytest.approx(plain * 1.2 + 2, abs=0.11)
