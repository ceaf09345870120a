import json

import pytest
from hypothesis import given, settings

from tests.random_examples import examples
from tests.visits.domain.planning.exact.whole_pools import whole_pool
from tests.visits.domain.planning.hand_made import board, job, week
from tests.visits.domain.planning.small_weeks import small_weeks
from visits.domain.planning.board import Board
from visits.domain.planning.exact.column_generation import ColumnGeneration, blended, first_prices, seen_days
from visits.domain.planning.exact.time_left import TimeLeft
from visits.domain.planning.exact.week_rows import WeekRows, days_of
from visits.domain.planning.exact_small import best_week
from visits.domain.planning.read_problem import read_problem


@given(small_weeks().filter(lambda problem: problem["jobs"]))
@settings(max_examples=examples(60), deadline=None)
def test_the_bound_is_the_relaxed_cost_over_all_days_of_the_week(problem):
    made = Board(read_problem(json.dumps(problem)))
    start = best_week(made)
    search = ColumnGeneration(Board(made.problem), start)
    search.run(TimeLeft(20))
    rows = search.rows
    model = rows.model()
    model.add(
        [rows.day(shift, order, cost) for (shift, _), (cost, order) in whole_pool(made).items() if order]
    )
    assert search.finished
    assert search.bound == pytest.approx(model.relaxed(20).cost, abs=1e-4)


def test_prices_to_begin_with_share_out_what_each_day_costs():
    made = board(week(job("a"), job("b", "far"), job("c", leave_out_cost=50)))
    prices = first_prices(made, WeekRows(made, 0), ((0, 1),))
    assert prices[0] + prices[1] == pytest.approx(made.cost(0, (0, 1)))
    assert prices[1] > prices[0]
    assert prices[2:] == [50, 0, 0]


def test_blended_prices_lie_between():
    assert blended([10.0, 0.0], [20.0, 4.0], 0.75) == [12.5, 1.0]


def test_the_cheapest_known_order_of_each_set_is_taken_from_board_and_pool():
    made = board(week(job("a"), job("b", "far"), job("c", "middle")))
    for order in ((0, 1), (1, 0), (2,), ()):
        made.cost(0, order)
    pool = {(0, frozenset({2})): (1.0, (2,)), (0, frozenset({1})): (7.0, (1,))}
    days = {day.order: day.cost for day in seen_days(made, pool)}
    assert days == {(0, 1): made.cost(0, (0, 1)), (2,): 1.0, (1,): 7.0}


def test_without_time_nothing_is_claimed():
    made = board(week(job("a"), job("b", "far")))
    search = ColumnGeneration(made, ((0, 1),))
    search.run(TimeLeft(0))
    assert (search.finished, search.bound) == (False, float("-inf"))
    assert [(day.shift, day.order) for day in search.days] == days_of(((0, 1),))
