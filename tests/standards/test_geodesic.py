"""Distances against PROJ's C library (through pyproj), and one worked example.

Both PROJ and geographiclib go back to C. F. F. Karney's Algorithms for geodesics (2013), in separate code; the worked
example is the one printed in GeographicLib's documentation (from memory).
"""

import random

import pytest
from pyproj import Geod

from visits.domain.planning.travel import geodesic_km

WGS84 = Geod(ellps="WGS84")


def test_distances_agree_with_proj_to_a_millimetre():
    rng = random.Random(11784)
    for _ in range(300):
        start = rng.uniform(-89, 89), rng.uniform(-180, 180)
        end = rng.uniform(-89, 89), rng.uniform(-180, 180)
        metres = WGS84.inv(start[1], start[0], end[1], end[0])[2]
        assert geodesic_km(start, end) * 1000 == pytest.approx(metres, abs=0.001)


def test_new_york_to_london_is_as_long_as_in_the_worked_example():
    """JFK 40.6 N 73.8 W to LHR 51.6 N 0.5 W: 5551.759 km."""
    assert geodesic_km((40.6, -73.8), (51.6, -0.5)) == pytest.approx(5551.759, abs=0.001)
