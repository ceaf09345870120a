from datetime import UTC, datetime, timedelta

import pytest

from visits.domain.kit.blade_hours import BladeHours, blade_hours
from visits.domain.kit.edge_log import CowCut

START = datetime(2026, 3, 2, tzinfo=UTC)


def cows(*seconds):
    return [CowCut(1, 7, START + timedelta(hours=n), each) for n, each in enumerate(seconds)]


def test_the_hours_are_the_sum_of_its_cows():
    assert blade_hours(cows(600, 1200, 1800), START).hours == pytest.approx(1)


def test_cows_before_it_was_new_are_not_counted():
    assert blade_hours(cows(600, 1200, 1800), START + timedelta(hours=1)).cows == 2


def test_a_cow_without_a_time_is_taken_at_the_mean():
    found = blade_hours(cows(600, None, 1200), START)
    assert found == BladeHours(pytest.approx(0.75), 3, 1)


def test_without_a_time_nothing_is_reckoned_and_without_a_cow_it_is_nought():
    assert blade_hours(cows(None, None), START).hours is None
    assert blade_hours([], START).hours == 0


@pytest.mark.parametrize(
    ("limit", "is_over", "left"), [(None, False, None), (1.5, False, 0.5), (1.0, True, 0)]
)
def test_it_is_to_be_replaced_when_its_hours_are_up(limit, is_over, left):
    found = blade_hours(cows(1800, 1800), START, limit)
    assert found.is_over is is_over
    assert found.left == (left if left is None else pytest.approx(left))
