"""Two years of cases, told apart only for sure."""

import numpy as np
import pytest

from visits.domain.herd.case_change import YearOfCases, case_change
from visits.domain.herd.change_flag import Direction

LEVEL = 0.975
COWS = 80


def year(cases, cow_years=80.0, looks=240, first=0):
    """So many cows with one case each."""
    return YearOfCases({first + cow: 1 for cow in range(cases)}, cow_years, looks)


def clumped(chance, mean, looks=240):
    """Cases of a herd in which cows differ, each year anew: their number spreads far more than chance alone lets it."""
    each = chance.poisson(mean * chance.gamma(0.5, 2.0, COWS))
    return YearOfCases({cow: int(count) for cow, count in enumerate(each) if count}, float(COWS), looks)


@pytest.mark.parametrize(("now", "direction"), [(60, Direction.RISEN), (8, Direction.FALLEN), (35, None)])
def test_a_change_beyond_chance_is_told_with_its_direction(now, direction):
    assert case_change(year(now), year(30), LEVEL) is direction


def test_more_cases_from_as_many_more_looks_are_no_change():
    assert case_change(year(60, looks=480), year(30), LEVEL) is None


def test_more_cases_in_as_much_more_cow_time_are_no_change():
    assert case_change(year(60, cow_years=160), year(30), LEVEL) is None


def test_many_cases_of_a_few_cows_are_a_few_cows():
    now, before = YearOfCases({1: 30, 2: 20}, 80.0, 240), YearOfCases({3: 15, 4: 10}, 80.0, 240)
    assert case_change(now, before, LEVEL) is None


@pytest.mark.parametrize(
    ("now", "before"),
    [(year(0), year(0)), (year(60, looks=0), year(3)), (year(60), year(3, cow_years=0.0))],
)
def test_without_anything_to_go_by_nothing_is_told(now, before):
    assert case_change(now, before, LEVEL) is None


def test_steady_herds_with_cases_in_clumps_are_told_changed_no_more_often_than_stated():
    """500 herds at 97.5 %: 12.5 expected; three standard errors of that are 10.5."""
    chance = np.random.default_rng(11)
    told = [case_change(clumped(chance, 0.8), clumped(chance, 0.8), LEVEL) for _ in range(500)]
    print(f"told changed: {sum(each is not None for each in told)} of 500 steady herds")
    assert sum(each is not None for each in told) <= 23


def test_a_doubled_rate_of_such_a_herd_is_mostly_told():
    chance = np.random.default_rng(8)
    told = [case_change(clumped(chance, 1.6), clumped(chance, 0.8), LEVEL) for _ in range(100)]
    print(f"doubled rate told: {told.count(Direction.RISEN)} of 100")
    assert told.count(Direction.RISEN) >= 45
    assert Direction.FALLEN not in told
