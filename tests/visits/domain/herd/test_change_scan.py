from dataclasses import replace
from fractions import Fraction
from math import comb

import numpy as np
import pytest
from scipy import stats

from visits.domain.herd.change_counts import USUAL_CHANGE_RULE, Counting
from visits.domain.herd.change_scan import (
    ever_flagged,
    first_flagged,
    first_to_compare,
    running,
    stable_histories,
    tail_chances,
)

SEEN, YEARS = Counting.OF_COWS_SEEN, Counting.OVER_COW_YEARS
RULE = USUAL_CHANGE_RULE


def tails(cases, exposure, marks, counting, rule=RULE):
    """Chances of a rise and of a fall, of one history."""
    told = running(np.array([cases], dtype=float), np.array(exposure, dtype=float))
    rise, fall = tail_chances(told, marks, counting, rule)
    return float(rise[0]), float(fall[0])


def test_a_rise_of_cows_seen_has_the_hypergeometric_chance_by_hand():
    """20 cows with it among 300 seen; 16 of them are among the last 100. The outcome itself counts half."""
    chances = [comb(20, k) * comb(280, 100 - k) / comb(300, 100) for k in range(21)]
    rise, fall = tails([2, 2, 16], [100, 100, 100], (0, 2, 3), SEEN)
    assert rise == pytest.approx(sum(chances[17:]) + chances[16] / 2, rel=1e-6)
    assert fall == pytest.approx(1 - rise)


@pytest.mark.parametrize(("cases", "mark"), [([120, 100], 1), ([3, 197, 7], 1), ([120, 0], 1)])
@pytest.mark.parametrize("counting", Counting)
def test_a_chance_far_out_is_summed_up_itself_and_does_not_cancel_to_0(cases, mark, counting):
    """Against whole numbers: 100 of 200 cows after 120 of 1,200 has a chance of 7e-37, not of 0."""
    exposure = [1200, *[200] * (len(cases) - 1)]
    total, new, part, over = sum(cases), sum(cases[mark:]), sum(exposure[mark:]), sum(exposure)
    ways = [
        comb(part, k) * comb(over - part, total - k)
        if counting is SEEN
        else comb(total, k) * part**k * (over - part) ** (total - k)
        for k in range(total + 1)
    ]
    least = min(2 * sum(ways[new + 1 :]), 2 * sum(ways[:new])) + ways[new]
    found = min(tails(cases, exposure, (0, mark, len(cases)), counting))
    assert 0 < found < 1e-8
    assert found == pytest.approx(float(Fraction(least, 2 * sum(ways))), rel=1e-8)


def test_a_fall_over_cow_years_has_the_binomial_chance_by_hand():
    """40 cases in 100 cow-years, of which 1 in the last 25."""
    chances = [comb(40, k) * 0.25**k * 0.75 ** (40 - k) for k in range(2)]
    _, fall = tails([20, 19, 1], [40, 35, 25], (0, 2, 3), YEARS)
    assert fall == pytest.approx(chances[0] + chances[1] / 2, rel=1e-9)


def test_only_what_lies_between_the_marks_is_looked_at():
    assert tails([9, 2, 2, 16], [100] * 4, (1, 3, 4), SEEN) == tails([2, 2, 16], [100] * 3, (0, 2, 3), SEEN)


@pytest.mark.parametrize("cases", [[0, 0, 4], [5, 5, 6]], ids=["too few cases", "near what was expected"])
def test_nothing_is_told_of(cases):
    assert tails(cases, [100, 100, 100], (0, 2, 3), SEEN) == (1, 1)


@pytest.mark.parametrize("counting", Counting)
def test_a_past_that_varied_by_more_than_chance_makes_the_scale_wider(counting):
    """By hand: Pearson's chi square of the three periods before, over its two degrees of freedom."""
    steady, wild = (tails([*past, 45], [100] * 4, (0, 3, 4), counting)[0] for past in ([20] * 3, [8, 20, 32]))
    variance = 20 * 0.8 if counting is SEEN else 20
    spread = (12**2 + 0 + 12**2) / variance / 2
    assert stats.norm.isf(wild) == pytest.approx(stats.norm.isf(steady) / spread**0.5, rel=1e-6)
    assert steady < RULE.chance < wild


@pytest.mark.parametrize("counting", Counting)
def test_leaving_near_figures_out_never_hides_an_unlikely_one(counting):
    """Every count that could come, for many totals and parts: worked out in full, none is missed."""
    everything = replace(RULE, chance=0.5)
    for cases in (5, 8, 13, 21, 50, 120, 290):
        for part in (3, 12, 40, 150, 280, 297):
            new = np.arange(max(0, cases + part - 300), min(cases, part) + 1, dtype=float)
            told = running(np.column_stack([cases - new, new]), np.array([300.0 - part, part]))
            quick, full = (
                np.minimum(*tail_chances(told, (0, 1, 2), counting, rule)) for rule in (RULE, everything)
            )
            unlikely = full <= RULE.chance
            assert np.array_equal(quick[unlikely], full[unlikely])
            assert not (quick <= RULE.chance)[~unlikely].any()


def test_a_change_is_looked_for_after_some_past_and_not_too_far_back():
    rule = replace(RULE, window=3, least_past=2)
    assert list(first_to_compare(1, 0, rule)) == []
    assert list(first_to_compare(2, 0, rule)) == [2]
    assert list(first_to_compare(9, 0, rule)) == [7, 8, 9]
    assert list(first_to_compare(9, 6, rule)) == [8, 9]


def test_each_history_is_flagged_by_its_own_cases_in_the_period_that_tells():
    histories = np.array([[10.0, 10, 10, 10], [10, 10, 40, 10], [10, 10, 10, 0], [20, 20, 20, 20]])
    assert ever_flagged(histories, np.full(4, 100.0), SEEN, RULE).tolist() == [False, True, True, False]
    assert first_flagged(histories, np.full(4, 100.0), SEEN, RULE).tolist() == [4, 2, 3, 4]


@pytest.mark.parametrize("counting", Counting)
def test_histories_have_the_total_and_the_spread_that_chance_gives(counting):
    exposure = np.array([50.0, 100.0, 150.0])
    drawn = stable_histories(60, exposure, counting, replace(RULE, draws=4000))
    part = exposure / 300
    variance = 60 * part * (1 - part) * (240 / 299 if counting is SEEN else 1)
    assert set(drawn.sum(axis=1)) == {60}
    assert drawn.mean(axis=0) == pytest.approx(60 * part, rel=0.02)
    assert drawn.var(axis=0) == pytest.approx(variance, rel=0.1)
    assert np.array_equal(drawn, stable_histories(60, exposure, counting, replace(RULE, draws=4000)))
