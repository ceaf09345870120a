"""Garwood's exact Poisson interval against statsmodels and against what defines it."""

import pytest
from scipy import stats
from statsmodels.stats.rates import confint_poisson

from visits.domain.herd.intervals import poisson_exact

COUNTS = (0, 1, 2, 3, 5, 10, 17, 30, 99, 100, 1000, 17114)


@pytest.mark.parametrize("level", [0.8, 0.95, 0.99])
def test_the_interval_is_that_of_statsmodels_at_every_count(level):
    for count in COUNTS:
        found = poisson_exact(count, level)
        wanted = confint_poisson(count, 1, method="exact-c", alpha=1 - level)
        assert (found.low, found.high) == pytest.approx(wanted, rel=1e-9, abs=1e-9), count


def test_a_rate_over_cow_years_is_that_of_statsmodels():
    """Randall et al. 2015, J Dairy Sci 98:3766: 17,114 lame looks in 79,565 cow-weeks (trade-facts 4)."""
    found = poisson_exact(17114).times(1 / 79565)
    wanted = confint_poisson(17114, 79565, method="exact-c")
    assert (found.low, found.high) == pytest.approx(wanted, abs=1e-9)
    assert round(100 * 17114 / 79565, 1) == 21.5


def test_at_its_bounds_the_count_is_just_as_rare_as_the_level_says():
    for count in COUNTS[1:]:
        found = poisson_exact(count)
        assert stats.poisson.sf(count - 1, found.low) == pytest.approx(0.025, rel=1e-6)
        assert stats.poisson.cdf(count, found.high) == pytest.approx(0.025, rel=1e-6)


@pytest.mark.parametrize(
    ("count", "low", "high"), [(0, 0.0, 3.689), (1, 0.0253, 5.572), (5, 1.623, 11.668), (10, 4.795, 18.390)]
)
def test_the_bounds_are_those_of_the_usual_table(count, low, high):
    """Garwood's table as printed in textbooks, from memory."""
    found = poisson_exact(count)
    assert (found.low, found.high) == pytest.approx((low, high), abs=6e-4)
