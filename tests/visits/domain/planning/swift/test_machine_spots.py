import json

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings

from tests.bench.planning.made_up_weeks import made_up_week
from tests.random_examples import examples
from tests.visits.domain.planning.small_weeks import small_weeks
from tests.visits.domain.planning.swift.machine_weeks import at_the_desk, empty_orders, present_week
from visits.domain.planning.board import Board
from visits.domain.planning.insertion import by_regret
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.swift.machine_search import load
from visits.domain.planning.swift.machine_spots import find_spot, put_in
from visits.domain.planning.swift.machine_timing import INF

SLOW = [HealthCheck.too_slow, HealthCheck.data_too_large]


def half_filled(problem):
    """A week with every second job in it."""
    board, arrays, desk = at_the_desk(problem)
    chosen = set(range(0, len(board.problem.jobs), 2))
    week = by_regret(board, [() for _ in board.problem.shifts], chosen)
    orders, sizes = empty_orders(board)
    for at, order in enumerate(week):
        orders[at, : len(order)], sizes[at] = order, len(order)
    load(arrays, desk, orders, sizes)
    return board, arrays, desk, week


def best_spot(board, week, job, shift):
    old = board.cost(shift, week[shift])
    spots = [(*week[shift][:at], job, *week[shift][at:]) for at in range(len(week[shift]) + 1)]
    return min(board.cost(shift, longer) for longer in spots) - old


def check_every_spot(problem):
    board, arrays, desk, week = half_filled(problem)
    planned = {job for order in week for job in order}
    for job in set(range(len(board.problem.jobs))) - planned:
        for shift in range(len(week)):
            find_spot(arrays, desk, job, shift)
            exact, ours = best_spot(board, week, job, shift), desk.extra[job, shift]
            assert (ours >= INF and exact == float("inf")) or ours == pytest.approx(exact, abs=1e-6)


@settings(max_examples=examples(100), deadline=None, derandomize=True, suppress_health_check=SLOW)
@given(small_weeks(most_jobs=6))
def test_the_best_spot_is_the_one_that_trying_each_finds(problem):
    check_every_spot(problem)


def test_the_same_on_a_made_up_week():
    check_every_spot(made_up_week(30, 2, 5))


def test_putting_in_gives_the_order_and_the_cost_that_were_promised():
    board, arrays, desk, week = half_filled(made_up_week(20, 1, 3))
    planned = {job for order in week for job in order}
    done = 0
    for job in set(range(20)) - planned:
        find_spot(arrays, desk, job, 2)
        if desk.extra[job, 2] < INF:
            put_in(arrays, desk, job, 2)
            done += 1
            assert desk.cost[0, 2] == pytest.approx(board.cost(2, present_week(desk)[2]), abs=1e-6)
    assert done


def test_a_day_that_breaks_a_rule_is_emptied_on_loading():
    board, arrays, desk = at_the_desk(Board(read_problem(json.dumps(made_up_week(20, 1, 3)))))
    orders, sizes = empty_orders(board)
    orders[0, :20], sizes[0] = np.arange(20), 20
    load(arrays, desk, orders, sizes)
    assert present_week(desk)[0] == ()
