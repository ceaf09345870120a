"""Numbers of cows and of visits, and sums of so many sizes, held against reference libraries and a textbook example.

scipy.stats (betabinom, binom, poisson, nbinom, logser) and statsmodels.distributions (zinegbin: negative binomial by
mean and dispersion, with extra noughts). That a Poisson number of logarithmic sizes is negative binomial: Quenouille
1949, Biometrics 5:162 (from memory).
"""

from datetime import timedelta
from decimal import Decimal

import numpy as np
import pytest
from scipy import stats
from statsmodels.distributions.discrete import zinegbin

from tests.visits.domain.kit.forecast.made_models import MONDAY, ROUTINE, model
from visits.domain.kit.forecast.amounts import Amounts
from visits.domain.kit.forecast.counts import beta_binomial, number_of_visits, sum_of, times
from visits.domain.kit.forecast.item_forecast import days_needed, forecast_item
from visits.domain.kit.forecast.lattice import laid_on
from visits.domain.kit.forecast.open_work import Calls, OpenWork
from visits.domain.kit.forecast.spread import Spread
from visits.domain.kit.forecast.stock_ahead import StockAhead, SupplyTerms
from visits.domain.kit.forecast.use_ahead import use_ahead

NEAR = 1e-9
LEVELS = (0.05, 0.5, 0.8, 0.95, 0.999)


@pytest.mark.parametrize(
    ("cows", "curve"), [(1, (0.3, 4.0)), (40, (1.1, 47.0)), (200, (22.0, 978.0)), (60, (1e6, 1e6))]
)
def test_cows_that_use_some_equal_scipy(cows, curve):
    told = beta_binomial(cows, curve)
    reference = stats.betabinom(cows, *curve)
    assert told == pytest.approx(reference.pmf(np.arange(cows + 1)), abs=NEAR)
    spread = Spread.of_cells(Decimal(1), told)
    assert [spread.quantile(level) for level in LEVELS] == [reference.ppf(level) for level in LEVELS]


@pytest.mark.parametrize(
    ("mean", "ratio", "reference"),
    [
        (0.47, 1.0, stats.poisson(0.47)),
        (6.5, 1.0, stats.poisson(6.5)),
        (1.33, 1.9, stats.nbinom(1.33 / 0.9, 1 / 1.9)),
        (12.0, 3.0, stats.nbinom(6.0, 1 / 3)),
        (1.2, 0.4, stats.binom(2, 0.6)),
        (2.0, 0.5, stats.binom(4, 0.5)),
    ],
)
def test_numbers_of_visits_equal_scipy(mean, ratio, reference):
    told = number_of_visits(mean, ratio)
    assert told == pytest.approx(reference.pmf(np.arange(len(told))), abs=NEAR)
    assert reference.sf(len(told) - 1) < 1e-12


@pytest.mark.parametrize(("mean", "dispersion"), [(0.8, 0.7), (3.0, 0.25)])
@pytest.mark.parametrize("off", [0.0, 0.03])
def test_numbers_of_visits_of_which_some_are_called_off_all_at_once_equal_statsmodels(mean, dispersion, off):
    told = (1 - off) * number_of_visits(mean, 1 + dispersion * mean)
    told[0] += off
    assert told == pytest.approx(zinegbin.pmf(np.arange(len(told)), mean, dispersion, 2, off), abs=NEAR)


@pytest.mark.parametrize(("size", "share"), [(1.5, 0.4), (4.0, 0.2)])
def test_a_poisson_number_of_logarithmic_sizes_is_negative_binomial(size, share):
    sizes = stats.logser(share).pmf(np.arange(200))
    told = sum_of(number_of_visits(-size * np.log1p(-share), 1.0), sizes)
    assert told == pytest.approx(stats.nbinom(size, 1 - share).pmf(np.arange(len(told))), abs=NEAR)


def test_so_many_days_of_poisson_use_are_poisson():
    told = times(number_of_visits(0.7, 1.0), 19)
    assert told == pytest.approx(stats.poisson(13.3).pmf(np.arange(len(told))), abs=NEAR)


# Nahmias, Production and Operations Analysis, examples 5.1 and 5.2 (from memory): copies of a weekly paper asked for at
# a newsstand in 52 weeks; mean 11.73 and standard deviation 4.74 as the book has them. Bought at 25, sold at 75, taken
# back at 10 cents, so that (75 - 25) / (75 - 10) = 0.77 is the chance to be covered; the book's answer is 15 copies.
ASKED_FOR = (
    *(15, 19, 9, 12, 9, 22, 4, 7, 8, 11, 14, 11, 6, 11, 9, 18, 10, 0, 14, 12, 8, 9, 5, 4, 4, 17),
    *(18, 14, 15, 8, 6, 7, 12, 15, 15, 19, 9, 10, 9, 16, 8, 11, 11, 18, 15, 17, 19, 14, 14, 17, 13, 12),
)


def test_the_order_of_a_newsstand_is_that_of_the_textbook():
    seen = Amounts((Decimal(copies), 1.0) for copies in ASKED_FOR)
    cells = laid_on(seen, Decimal(1)).chances
    week = Spread.of_cells(Decimal(1), cells)
    assert len(ASKED_FOR) == 52
    assert week.mean == pytest.approx(11.73, abs=0.005)
    assert (week.variance * 52 / 51) ** 0.5 == pytest.approx(4.74, abs=0.005)
    assert week.quantile(50 / 65) == 15
    # The same through the whole forecast: one day of use, an order a day, nothing there.
    told = model(open_work=_OneDay(frozenset({0}), {ROUTINE: Calls((1.0,), 1.0)}, {ROUTINE: cells}))
    terms = SupplyTerms(Decimal(1), 0, 1, 50 / 65)
    ahead = use_ahead(told, [], MONDAY, MONDAY + timedelta(days=days_needed(terms, MONDAY, 1) - 1))
    found = forecast_item(1, ahead, StockAhead(Decimal(0)), terms, 1)
    assert (found.reorder_point, found.order_quantity) == (15, 15)


class _OneDay(OpenWork):
    """A day on which the paper surely comes."""

    def cells(self, ahead):
        return self.sizes[ROUTINE]
