import subprocess
import sys
from math import inf

import pytest

from visits.domain.planning.exact.cover_model import Column, CoverModel

ROWS = ((0,), (0, 1), (1,), (1, 2), (0, 2))
COSTS = (3.0, 4.0, 3.0, 4.0, 4.0)


@pytest.fixture
def model():
    """Three rows to be kept once each; the three pairs at half each are cheaper than any whole choice."""
    made = CoverModel([1.0] * 3, [1.0] * 3)
    made.add([Column(cost, rows, (1.0,) * len(rows)) for cost, rows in zip(COSTS, ROWS, strict=True)])
    return made


def test_the_relaxed_model_takes_halves(model):
    assert model.relaxed(10).cost == pytest.approx(6.0)


def test_prices_of_the_rows_pay_for_every_column_taken(model):
    relaxed = model.relaxed(10)
    for cost, rows, share in zip(COSTS, ROWS, relaxed.shares, strict=True):
        paid = sum(relaxed.prices[row] for row in rows)
        assert paid <= cost + 1e-9
        assert share < 1e-9 or paid == pytest.approx(cost)
    assert sum(relaxed.prices) == pytest.approx(relaxed.cost)


def test_a_whole_choice_is_proven_and_keeps_every_row_once(model):
    chosen, bound = model.chosen([], 10)
    assert bound == pytest.approx(7.0)
    assert sorted(row for at in chosen for row in ROWS[at]) == [0, 1, 2]
    assert sum(COSTS[at] for at in chosen) == 7.0


def test_columns_may_come_later_and_the_answer_follows(model):
    model.relaxed(10)
    model.add([Column(1.0, (0, 1, 2), (1.0, 1.0, 1.0))])
    assert model.relaxed(10).cost == pytest.approx(1.0)
    assert model.chosen([], 10) == ([5], 1.0)


def test_rows_that_nothing_keeps_have_no_answer():
    model = CoverModel([1.0], [1.0])
    assert model.relaxed(10) is None


def test_a_column_may_be_shut(model):
    model.add([Column(1.0, (0, 1, 2), (1.0, 1.0, 1.0), 0.0)])
    assert model.relaxed(10).cost == pytest.approx(6.0)


def test_without_time_a_whole_choice_is_the_start_unproven():
    wide = CoverModel([1.0] * 40, [1.0] * 40)
    columns = [Column(9.0, (row,), (1.0,)) for row in range(40)]
    columns += [Column(7.0 + (a * b) % 3, (a, b), (1.0, 1.0)) for a in range(40) for b in range(a)]
    wide.add(columns)
    chosen, bound = wide.chosen(list(range(40)), 0)
    assert bound < 360
    assert sorted(row for at in chosen for row in columns[at].rows) == list(range(40))


def test_a_start_that_is_reckoned_too_low_does_not_hide_what_is_better():
    """Found by a random week: HiGHS 1.16 took all five left out, at 645 376, for 497 320 and stopped there."""
    rows = CoverModel([1.0] * 5 + [-inf] * 3, [1.0] * 7 + [26.0])
    out = [(800.0, 0.0), (148_056.0, 6.0), (148_056.0, 6.0), (172_732.0, 7.0), (175_732.0, 7.0)]
    rows.add([Column(cost, (job, 7), (1.0, weight)) for job, (cost, weight) in enumerate(out)])
    days = [(0.0, 0, (0,)), (900.0, 0, (1,)), (6137.5, 1, (0,)), (7937.5, 1, (1,)), (10437.5, 1, (0, 1))]
    rows.add([Column(cost, (*jobs, 5 + shift), (1.0,) * (len(jobs) + 1)) for cost, shift, jobs in days])
    assert rows.chosen([0, 1, 2, 3, 4], 10) == ([0, 2, 3, 4, 6], pytest.approx(498_220.0))


def test_the_engine_is_not_loaded_with_the_planner_and_says_nothing():
    text = (
        "import sys, visits.domain.planning.exact.choose_days as c\n"
        "assert 'highspy' not in sys.modules and 'numpy' not in sys.modules\n"
        "from visits.domain.planning.exact.cover_model import Column, CoverModel\n"
        "m = CoverModel([1.0], [1.0]); m.add([Column(1.0, (0,), (1.0,))]); m.relaxed(1); m.chosen([0], 1)"
    )
    ran = subprocess.run([sys.executable, "-c", text], capture_output=True, text=True, check=True)
    assert ran.stdout == ""
