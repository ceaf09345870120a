import numpy as np
import pytest
from scipy import stats

from visits.domain.herd.beta_mixture import BetaMixture

ONE = BetaMixture(np.array([3.0]), np.array([17.0]), np.array([1.0]))
TWO = BetaMixture(np.array([3.0, 30.0]), np.array([17.0, 70.0]), np.array([0.4, 0.6]))


def test_one_curve_has_the_bounds_of_the_beta_curve():
    bounds = ONE.interval(0.9)
    assert (bounds.low, bounds.high) == pytest.approx(stats.beta.interval(0.9, 3, 17), abs=1e-8)
    assert ONE.mean == pytest.approx(0.15)


def test_a_mixture_holds_what_its_draws_hold():
    chance = np.random.default_rng(1)
    which = chance.random(40_000) < 0.4
    drawn = np.where(which, chance.beta(3, 17, 40_000), chance.beta(30, 70, 40_000))
    assert TWO.mean == pytest.approx(drawn.mean(), abs=0.003)
    for value in (0.05, 0.15, 0.25, 0.35):
        assert TWO.chance_below(value) == pytest.approx((drawn <= value).mean(), abs=0.01)


def test_half_of_the_tail_lies_on_each_side():
    bounds = TWO.interval(0.95)
    assert TWO.chance_below(bounds.low) == pytest.approx(0.025, abs=1e-7)
    assert TWO.chance_below(bounds.high) == pytest.approx(0.975, abs=1e-7)


@pytest.mark.parametrize(("value", "chance"), [(0.0, 0.0), (1.0, 1.0)])
def test_all_of_it_lies_between_none_and_all(value, chance):
    assert TWO.chance_below(value) == chance
