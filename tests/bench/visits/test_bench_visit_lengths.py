"""The bench in a small form: one seed, half the farms, a year; nothing is timed."""

from dataclasses import replace
from statistics import mean

import pytest

from tests.bench.visits.bench_visit_lengths import check, pooled, ratio
from tests.bench.visits.told_beforehand import tell_months


@pytest.fixture(scope="module")
def told():
    return tell_months(seed=1, months=12, farms=24, draws=150)


def test_what_is_learned_misses_by_a_fifth_less_than_a_flat_figure_per_cow(told):
    assert ratio(told.learned, told.flat) < 0.8
    assert ratio(told.learned, told.figures) < 0.8


def test_spans_of_lengths_and_arrivals_hold_about_four_in_five(told):
    """One small history: the bars of the bench, widened by three standard errors of so few visits."""
    assert mean(told.length_kept) == pytest.approx(0.8, abs=0.14)
    assert mean(told.arrival_kept) == pytest.approx(0.8, abs=0.14)


def test_told_anew_from_the_real_finish_the_span_is_narrower(told):
    assert mean(told.retimed_width) < 0.6 * mean(told.first_told_width)


def test_half_way_through_the_cows_the_end_is_told_better(told):
    assert mean(told.half_way) < 0.8 * mean(told.half_way_before)


@pytest.mark.parametrize(
    "worse",
    [
        {"learned": [50.0]},
        {"line": [1.0]},
        {"length_kept": [True]},
        {"arrival_kept": [False, True]},
    ],
)
def test_the_bench_raises_where_a_bar_is_missed(told, worse):
    kept = [True] * 4 + [False]
    good = replace(told, learned=[5.0], flat=[9.0], line=[8.0], length_kept=kept, arrival_kept=kept)
    check(good)
    with pytest.raises(AssertionError):
        check(replace(good, **worse))


def test_histories_are_pooled_visit_by_visit(told):
    assert len(pooled([told, told]).learned) == 2 * len(told.learned)
