import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import norm

from visits.domain.visit_lengths.spread_shape import SpreadShape, normal_shape, quantile, shape_of

errors = st.lists(st.floats(-6, 6), min_size=1, max_size=200)


@given(values=st.lists(st.floats(-100, 100), min_size=1, max_size=50), share=st.floats(0, 1))
def test_a_quantile_is_numpys_by_hazen(values, share):
    ordered = sorted(values)
    assert quantile(ordered, share) == pytest.approx(np.quantile(ordered, share, method="hazen"), abs=1e-9)


def test_a_quantile_of_nothing_is_refused():
    with pytest.raises(ValueError, match="no values"):
        quantile([], 0.5)


@pytest.mark.parametrize("share", [0.001, 0.05, 0.1, 0.5, 0.9, 0.999])
def test_the_shape_before_anything_was_seen_is_the_normal_curve_of_scipy(share):
    assert normal_shape().error_below(share) == pytest.approx(norm.ppf(share), abs=0.02)


@given(seen=errors, score=st.floats(-4, 4))
def test_score_and_error_lead_back_to_each_other(seen, score):
    shape = shape_of(seen)
    assert shape.score_of(shape.error_at(score)) == pytest.approx(score, abs=1e-4)


@given(seen=errors, score=st.floats(-4, 4), more=st.floats(0.01, 2))
def test_a_higher_score_is_a_higher_error(seen, score, more):
    shape = shape_of(seen)
    assert shape.error_at(score) < shape.error_at(score + more)


def test_many_errors_seen_outweigh_the_normal_curve():
    lopsided = np.random.default_rng(1).gamma(2, 1, 3000)
    shape = shape_of(list(lopsided))
    assert shape.error_below(0.9) == pytest.approx(np.quantile(lopsided, 0.9), abs=0.15)


def test_few_errors_hardly_move_it():
    assert shape_of([3.0]).error_below(0.5) == pytest.approx(0, abs=0.1)


@pytest.mark.parametrize("bad", [(), (1.0,), (1.0, 1.0), (2.0, 1.0)])
def test_a_shape_must_rise(bad):
    with pytest.raises(ValueError, match="rise"):
        SpreadShape(bad)
