from fractions import Fraction

import pytest

from visits.domain.planning.audit.legs import EstimatedLegs, TableLegs, to_metre


def test_a_place_to_itself_is_nothing_whatever_the_table_says():
    legs = TableLegs({"a": 0}, [[5]], [[Fraction(5)]])
    assert (legs.between("a", "a").time, legs.between("a", "a").metres) == (0, 0)


def test_one_degree_along_the_equator():
    """Source: WGS 84 semi-major axis 6 378 137 m (NIMA TR8350.2); an equatorial degree is pi a / 180."""
    legs = EstimatedLegs({"a": (0.0, 0.0), "b": (0.0, 1.0)}, Fraction(1), Fraction(60), 120_000_000)
    leg = legs.between("a", "b")
    assert leg.metres == 111_319
    assert leg.time / 60e6 == pytest.approx(111.3194908 + 2)


def test_half_a_metre_goes_up():
    assert [to_metre(Fraction(n, 2)) for n in (0, 1, 2, 3)] == [0, 1, 1, 2]
