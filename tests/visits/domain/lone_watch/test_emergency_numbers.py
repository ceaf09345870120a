"""The number to ring, by country."""

import pytest

from visits.domain.lone_watch.emergency_numbers import EU, UNKNOWN, emergency_number


@pytest.mark.parametrize(
    ("country", "number"),
    [("GB", "999"), ("IE", "112"), ("NL", "112"), ("US", "911"), ("AU", "000"), ("NZ", "111"), ("gb", "999")],
)
def test_the_number_of_a_country(country, number):
    assert emergency_number(country) == number


def test_the_union_has_27_members():
    assert len(set(EU)) == 27


def test_where_none_is_known_no_number_is_invented():
    assert emergency_number("XX") == UNKNOWN
    assert not any(sign.isdigit() for sign in UNKNOWN)
