from datetime import date

import pytest

from farms.domain.calvings import KnownCalving, calving_meant

FIRST = KnownCalving(1, date(2024, 3, 1), 1)
SECOND = KnownCalving(2, date(2025, 4, 2), 2)


@pytest.mark.parametrize(
    ("day", "lactation", "meant"),
    [
        (date(2025, 4, 2), None, SECOND),
        (date(2025, 4, 20), None, SECOND),
        (date(2025, 10, 18), None, SECOND),
        (date(2025, 10, 19), None, None),
        (date(2026, 5, 3), 3, None),
        (date(2026, 5, 3), 2, SECOND),
        (date(2023, 3, 1), 1, FIRST),
        (date(2023, 3, 1), None, None),
    ],
)
def test_a_told_calving_is_the_near_one_or_the_one_of_its_number_else_a_new_one(day, lactation, meant):
    assert calving_meant(day, lactation, [FIRST, SECOND]) == meant


def test_nearness_goes_before_the_number_of_the_lactation():
    assert calving_meant(date(2024, 3, 20), 2, [FIRST, SECOND]) == FIRST


def test_a_cow_without_calvings_has_a_new_one():
    assert calving_meant(date(2024, 3, 20), 1, []) is None
