"""Wilson's and Newcombe's intervals against print (fixtures/standards/proportions.json) and against statsmodels."""

import pytest
from statsmodels.stats.proportion import confint_proportions_2indep, proportion_confint

from visits.domain.herd.intervals import newcombe, normal_quantile, wilson

LEVELS = (0.8, 0.95, 0.99)
TOTALS = (1, 2, 3, 7, 10, 41, 96, 500, 14700, 1_000_000)


def counts_up_to(total: int) -> set[int]:
    return {0, 1, total // 7, total // 2, total - 1, total}


def test_intervals_of_published_trials_come_out_to_the_printed_decimal(published):
    for case in published("proportions.json")["wilson_95"]:
        found = wilson(case["count"], case["of"]).times(100)
        assert (round(found.low, 1), round(found.high, 1)) == (case["low"], case["high"]), case["what"]


def test_the_interval_solves_its_own_defining_equation():
    """Wilson 1927: the bounds are the p with |count/n - p| = z sqrt(p (1 - p) / n)."""
    found = wilson(23, 41)
    for bound in (found.low, found.high):
        assert abs(23 / 41 - bound) == pytest.approx(normal_quantile() * (bound * (1 - bound) / 41) ** 0.5)


@pytest.mark.parametrize("level", LEVELS)
def test_wilson_is_that_of_statsmodels_from_one_cow_to_a_million(level):
    for total in TOTALS:
        for count in counts_up_to(total):
            found = wilson(count, total, level)
            wanted = proportion_confint(count, total, alpha=1 - level, method="wilson")
            assert (found.low, found.high) == pytest.approx(wanted, abs=1e-9), (count, total)


def test_differences_come_out_as_in_newcombes_own_table(published):
    for case in published("proportions.json")["newcombe_10"]:
        found = newcombe(*case["first"], *case["other"])
        assert (round(found.low, 4), round(found.high, 4)) == (case["low"], case["high"]), case


@pytest.mark.parametrize("level", LEVELS)
def test_newcombe_is_that_of_statsmodels(level):
    for total, other_total in ((1, 1), (2, 30), (10, 20), (41, 45), (96, 900), (8020, 120)):
        for count in counts_up_to(total):
            for other in counts_up_to(other_total):
                found = newcombe(count, total, other, other_total, level)
                wanted = confint_proportions_2indep(
                    count, total, other, other_total, method="newcomb", compare="diff", alpha=1 - level
                )
                assert (found.low, found.high) == pytest.approx(wanted, abs=1e-9), (count, total, other)
