"""Distances on the map against geodesics on WGS 84 by GeographicLib (Karney 2013) through pyproj."""

import math

import pytest
from pyproj import Geod

from tests.visits.documents.map_places import valley
from visits.documents.map_projection import projection_of

GEOD = Geod(ellps="WGS84")


def mm_between(projection, one, other):
    (x0, y0), (x1, y1) = projection.point(*one), projection.point(*other)
    return math.hypot(x1 - x0, y1 - y0)


@pytest.mark.parametrize("lat", [-38, 0, 54, 60])
@pytest.mark.parametrize(("half", "share"), [(0.18, 0.01), (0.4, 0.02)])
def test_distances_are_right_to_one_in_a_hundred_over_40_km_and_two_over_90(lat, half, share):
    low, high = (lat - half, 10 - half), (lat + half, 10 + half)
    corners = [low, high, (low[0], high[1]), (high[0], low[1]), (lat, 10)]
    projection = projection_of(corners, (0, 0), (100, 100))
    for one in corners:
        for other in corners:
            km = GEOD.inv(one[1], one[0], other[1], other[0])[2] / 1000
            assert mm_between(projection, one, other) / projection.mm_per_km == pytest.approx(km, rel=share)


def test_north_is_up_and_east_is_right():
    projection = projection_of([(54, -2), (55, -1)], (0, 0), (50, 50))
    (x0, y0), (x1, y1) = projection.point(54, -2), projection.point(55, -1)
    assert (x1 > x0, y1 < y0) == (True, True)


def test_all_places_lie_in_the_frame_and_two_touch_it():
    spots = [(place.lat, place.lon) for place in valley()]
    projection = projection_of(spots, (10, 20), (80, 50))
    points = [projection.point(*spot) for spot in spots]
    assert all(9.999 <= x <= 90.001 and 19.999 <= y <= 70.001 for x, y in points)
    ys = [y for _, y in points]
    assert (min(ys), max(ys)) == pytest.approx((20, 70))


@pytest.mark.parametrize("spots", [[], [(54.2, -2.3)], [(54.2, -2.3), (54.2, -2.3)]])
def test_one_place_or_none_still_makes_a_map(spots):
    projection = projection_of(spots, (0, 0), (50, 50))
    assert projection.point(*(spots or [(0, 0)])[0]) == pytest.approx((25, 25))


def test_places_on_both_sides_of_the_date_line_are_neighbours():
    projection = projection_of([(-17, 179.9), (-17, -179.9)], (0, 0), (100, 100))
    xs = [projection.point(-17, lon)[0] for lon in (179.9, -179.9)]
    assert xs == pytest.approx([0, 100])


@pytest.mark.parametrize(("span", "km"), [(0.02, 0.5), (0.2, 5), (2, 50)])
def test_the_scale_bar_is_the_longest_round_length_that_fits(span, km):
    projection = projection_of([(54, -2), (54 + span, -2)], (0, 0), (100, 100))
    length_km, length_mm = projection.scale_bar(40)
    assert length_km == km
    assert length_mm == pytest.approx(km * projection.mm_per_km)
    assert length_mm <= 40
