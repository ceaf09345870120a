import pytest

from visits.domain.planning.exact.reduced_costs import ReducedCosts

DAYS = [(0, (0, 2)), (1, (1,)), (1, (2, 1, 0))]


@pytest.fixture
def priced():
    made = ReducedCosts(DAYS, [10.0, 4.0, 6.0], 3)
    made.at([1.0, 2.0, 3.0, -1.0, -2.0, 99.0])
    return made


def test_a_day_costs_less_what_its_jobs_and_its_shift_pay(priced):
    assert list(priced.reduced) == [10 - 1 - 3 + 1, 4 - 2 + 2, 6 - 6 + 2]


def test_the_cheapest_below_a_limit_come_first(priced):
    assert priced.cheapest(5.0, 9) == [2, 1]
    assert priced.cheapest(5.0, 1) == [2]


def test_days_left_aside_are_not_proposed_but_still_counted_within(priced):
    priced.leave_aside([2])
    assert priced.cheapest(5.0, 9) == [1]
    assert priced.within(4.0, 9) == [2, 1]


def test_no_days_have_no_prices():
    none = ReducedCosts([], [], 0)
    none.at([1.0])
    assert none.within(5.0, 9) == []
