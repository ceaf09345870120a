"""Held against scipy 1.17 (LAPACK's Cholesky), a library we did not write."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.linalg import cho_factor, cho_solve

from visits.domain.visit_lengths.small_algebra import NotPositive, inverse, product, times, turned


def positive(seed, size):
    loose = np.random.default_rng(seed).normal(size=(size + 2, size))
    return loose.T @ loose + 0.05 * np.eye(size)


@given(seed=st.integers(0, 10_000), size=st.integers(1, 20))
def test_the_inverse_is_that_of_scipy(seed, size):
    table = positive(seed, size)
    theirs = cho_solve(cho_factor(table), np.eye(size))
    assert np.allclose(inverse(table.tolist()), theirs, rtol=1e-7, atol=1e-9)


@given(seed=st.integers(0, 1000))
def test_products_are_those_of_numpy(seed):
    chance = np.random.default_rng(seed)
    left, right, vector = chance.normal(size=(3, 4)), chance.normal(size=(4, 2)), chance.normal(size=4)
    assert np.allclose(product(left.tolist(), right.tolist()), left @ right)
    assert np.allclose(times(left.tolist(), vector.tolist()), left @ vector)
    assert np.allclose(turned(left.tolist()), left.T)


@pytest.mark.parametrize("table", [[[0.0]], [[1.0, 2.0], [2.0, 1.0]], [[-1.0, 0.0], [0.0, 1.0]]])
def test_a_table_that_is_not_positive_is_refused(table):
    with pytest.raises(NotPositive):
        inverse(table)
