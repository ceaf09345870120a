"""Two groups of cows against a published trial (fixtures/standards/two_by_two.json), scipy and statsmodels."""

import itertools

import pytest
from scipy import stats
from scipy.stats.contingency import relative_risk
from statsmodels.stats.contingency_tables import Table2x2

from visits.domain.herd.two_groups import TwoGroups

SMALL = list(itertools.product((0, 1, 3, 8), repeat=4))
LARGE = [(40, 60, 20, 80), (4145, 10555, 300, 700), (0, 900, 12, 888), (900, 0, 12, 888), (5, 8000, 2, 120)]
TABLES = [table for table in SMALL + LARGE if table[0] + table[1] and table[2] + table[3]]


def printed(value: float, interval: object, decimals: int) -> list[float]:
    return [round(value, decimals), round(interval.low, decimals), round(interval.high, decimals)]


def test_a_published_trial_comes_out_to_the_printed_decimal(published):
    for case in published("two_by_two.json")["comparisons"]:
        found = TwoGroups(*case["table"])
        assert printed(found.relative_risk, found.relative_risk_interval, 2) == case["relative_risk"]
        decimals = len(case["fisher"].partition(".")[2])
        assert f"{found.fisher_p:.{decimals}f}" == case["fisher"], case["what"]
        if "odds_ratio" in case:
            assert printed(found.odds_ratio, found.odds_ratio_interval, 2) == case["odds_ratio"]
            assert round(found.chi_square, 2) == case["chi_square"]
            assert round(found.needed_to_treat, 1) == case["needed_to_treat"]
            points = printed(100 * found.risk_difference, found.simple_difference_interval.times(100), 1)
            assert [p for p, wanted in zip(points, case["points"], strict=True) if wanted is not None] == [
                wanted for wanted in case["points"] if wanted is not None
            ]


def test_fisher_is_that_of_scipy_on_every_small_table_and_some_large_ones():
    for a, b, c, d in TABLES:
        wanted = stats.fisher_exact([[a, b], [c, d]]).pvalue
        assert TwoGroups(a, b, c, d).fisher_p == pytest.approx(wanted, rel=1e-9), (a, b, c, d)


def test_ratios_and_chi_square_are_those_of_the_reference_libraries():
    for a, b, c, d in (table for table in TABLES if 0 not in table):
        found, level = TwoGroups(a, b, c, d), 0.95
        wanted = relative_risk(a, a + b, c, c + d)
        assert found.relative_risk == pytest.approx(wanted.relative_risk, rel=1e-9)
        bounds = wanted.confidence_interval(level)
        assert (found.relative_risk_interval.low, found.relative_risk_interval.high) == pytest.approx(
            tuple(bounds), rel=1e-9
        )
        table = Table2x2([[a, b], [c, d]], shift_zeros=False)
        assert found.odds_ratio == pytest.approx(table.oddsratio, rel=1e-9)
        bounds = (found.odds_ratio_interval.low, found.odds_ratio_interval.high)
        assert bounds == pytest.approx(table.oddsratio_confint(1 - level), rel=1e-9)
        square = stats.chi2_contingency([[a, b], [c, d]], correction=False)
        assert (found.chi_square, found.chi_square_p) == pytest.approx(
            (square.statistic, square.pvalue), rel=1e-9, abs=1e-12
        )
