from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.visits.domain.kit.forecast import by_enumeration
from visits.domain.kit.forecast.counts import beta_binomial, number_of_visits, sum_of, times


@given(st.integers(0, 6), st.fractions(Fraction(1, 8), 9), st.fractions(Fraction(1, 8), 9))
def test_cows_that_use_some_have_the_chances_of_rising_factorials(cows, a, b):
    wanted = by_enumeration.beta_binomial(cows, a, b)
    assert beta_binomial(cows, (float(a), float(b))) == pytest.approx([float(x) for x in wanted], abs=1e-12)


@pytest.mark.parametrize(("mean", "ratio"), [(0.4, 0.5), (1.3, 0.42), (2.3, 1.0), (0.5, 1.9), (3.0, 4.0)])
def test_numbers_of_visits_have_the_mean_and_the_variance_asked_for(mean, ratio):
    chances = number_of_visits(mean, ratio)
    n = np.arange(len(chances))
    found = float(chances @ n)
    assert sum(chances) == pytest.approx(1, abs=1e-12)
    assert min(chances) >= 0
    assert found == pytest.approx(mean, abs=1e-9)
    # Of a binomial the number of trials is whole, so that its variance is met nearly.
    room = 1e-6 if ratio >= 1 else 0.25 * mean
    assert float(chances @ (n - found) ** 2) == pytest.approx(mean * ratio, abs=room)


def test_no_visits_are_surely_none():
    assert number_of_visits(0, 2).tolist() == [1.0]


@given(
    st.lists(st.integers(0, 5), min_size=1, max_size=4).filter(any),
    st.lists(st.integers(0, 5), min_size=1, max_size=3).filter(any),
)
def test_a_sum_of_so_many_sizes_has_the_chances_of_every_case(numbers, sizes):
    chances = [Fraction(n, sum(numbers)) for n in numbers]
    size = {Fraction(at): Fraction(n, sum(sizes)) for at, n in enumerate(sizes)}
    wanted = by_enumeration.sum_of(chances, size)
    told = sum_of(np.array([float(c) for c in chances]), np.array([float(c) for c in size.values()]))
    for value, chance in wanted.items():
        got = told[int(value)] if value < len(told) else 0
        assert got == pytest.approx(float(chance), abs=1e-12)
    assert told.sum() == pytest.approx(1)


@pytest.mark.parametrize("number", [0, 1, 2, 7, 12])
def test_so_many_times_the_same_is_adding_it_as_often(number):
    cells, wanted = np.array([0.2, 0.5, 0.3]), np.ones(1)
    for _ in range(number):
        wanted = np.convolve(wanted, cells)
    assert times(cells, number) == pytest.approx(wanted, abs=1e-13)
