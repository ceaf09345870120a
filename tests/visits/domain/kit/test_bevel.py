"""Against the published rule of thumb (T. Jubb 2010), and a triangle that everybody knows."""

import math

import pytest

from visits.domain.kit.bevel import bevel_table, bevel_width

RULE_OF_THUMB = ((15, 4), (20, 3), (30, 2))
"""Degrees, and how many times as wide as the steel is thick, as published."""


@pytest.mark.parametrize(("degrees", "times"), RULE_OF_THUMB)
def test_the_bevel_is_as_wide_as_published_within_four_per_cent(degrees, times):
    """By the tangent it would be off by 7 to 13 per cent."""
    assert bevel_width(2.0, degrees) == pytest.approx(2.0 * times, rel=0.04)
    assert abs(2.0 / math.tan(math.radians(degrees)) - 2.0 * times) > 0.06 * 2.0 * times


def test_at_thirty_degrees_the_bevel_is_twice_the_steel():
    assert bevel_width(2.2, 30) == pytest.approx(4.4)


def test_the_table_says_mm_and_thicknesses():
    lines = bevel_table(2.0)
    assert [line.angle for line in lines] == [15, 20, 25, 30]
    assert lines[0].width == pytest.approx(7.727, abs=1e-3)
    assert lines[3].times == pytest.approx(2)


@pytest.mark.parametrize(("thickness", "angle"), [(0.1, 20), (21, 20), (2, 4.9), (2, 61)])
def test_what_no_knife_has_is_refused(thickness, angle):
    with pytest.raises(ValueError, match="from"):
        bevel_width(thickness, angle)
