from datetime import date

import pytest

from visits.domain.mobility import DueRange
from visits.domain.routine_due import routine_due

TODAY = date(2026, 3, 2)


@pytest.mark.parametrize(
    ("interval", "first", "last"),
    [
        (90, date(2026, 3, 23), date(2026, 4, 10)),
        (7, date(2026, 1, 6), date(2026, 1, 10)),
        (180, date(2026, 6, 12), date(2026, 7, 18)),
    ],
)
def test_the_next_visit_falls_due_about_the_interval_after_the_last(interval, first, last):
    assert routine_due(date(2026, 1, 1), interval, TODAY) == DueRange(first, last)


def test_a_farm_never_visited_is_due_from_today():
    assert routine_due(None, 90, TODAY) == DueRange(TODAY, date(2026, 3, 16))
