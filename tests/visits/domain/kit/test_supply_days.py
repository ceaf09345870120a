"""When an order comes."""

from datetime import date, timedelta

import pytest

from visits.domain.kit.supply_days import arrival_day

MONDAY = date(2026, 11, 30)


@pytest.mark.parametrize(
    ("ordered", "lead", "comes"),
    [(0, 4, 4), (0, 5, 7), (0, 6, 7), (0, 7, 7), (4, 1, 7), (4, 5, 9), (5, 0, 7)],
)
def test_calendar_days_and_a_weekend_slips_to_monday(ordered, lead, comes):
    assert arrival_day(MONDAY + timedelta(days=ordered), lead) == MONDAY + timedelta(days=comes)
