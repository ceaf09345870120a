"""The bench in a small form: forty planned days of four knives."""

import pytest

from tests.bench.visits.bench_edge_life import LIMIT, check, check_curve
from tests.bench.visits.worked_knives import WorkedDay, work_days


def test_edges_ground_as_the_plan_says_last_the_day():
    knives, days = work_days(1, 82, LIMIT)
    check(days)
    check_curve(knives)
    assert 0 < sum(day.ground for day in days) / len(days) < 1.5


def test_the_log_counts_the_cows_that_were_cut():
    knives, _ = work_days(2, 50, LIMIT)
    on = {knife: edges[-1] for knife, edges in knives.edges().items()}
    assert {knife: edge.cows for knife, edge in on.items()} == knives.done
    assert {knife: edge.is_dull for knife, edge in on.items()} == {
        knife: left <= 0 for knife, left in knives.left.items()
    }


@pytest.mark.parametrize(("ran_out", "match"), [(30, "ran out"), (8, "foreseen was")])
def test_the_bench_raises_when_a_bar_is_missed(ran_out, match):
    days = [WorkedDay(0.02, number < ran_out, 1) for number in range(100)]
    with pytest.raises(AssertionError, match=match):
        check(days)
