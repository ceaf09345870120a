"""The labels in machine code against the exact timing in Python, which tries every leaving time worth trying."""

import json

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.bench.planning.made_up_weeks import made_up_week
from tests.random_examples import examples
from tests.visits.domain.planning.hand_made import board, job, monday, shift, week, window
from tests.visits.domain.planning.small_weeks import small_weeks
from tests.visits.domain.planning.swift.machine_weeks import at_the_desk, drawn_orders, whole
from visits.domain.planning.board import Board
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.swift.machine_spots import order_cost
from visits.domain.planning.swift.machine_timing import INF, MOST, push

SLOW = [HealthCheck.too_slow, HealthCheck.data_too_large]


def same(ours, exact):
    return (ours >= INF and exact == float("inf")) or ours == pytest.approx(exact, abs=1e-6)


@settings(max_examples=examples(150), deadline=None, derandomize=True, suppress_health_check=SLOW)
@given(small_weeks(most_jobs=6), st.integers(0, 10**6))
def test_any_order_of_a_small_week_costs_the_same_both_ways(problem, seed):
    made, arrays, desk = at_the_desk(problem)
    for at, order in drawn_orders(made, seed, 25):
        assert same(order_cost(arrays, desk, at, whole(order), len(order)), made.cost(at, order)), (at, order)


@pytest.mark.parametrize("seed", range(3))
def test_any_order_of_a_made_up_week_costs_the_same_both_ways(seed):
    made, arrays, desk = at_the_desk(made_up_week(30, 2, seed))
    done = 0
    for at, order in drawn_orders(made, seed, 600, longest=8):
        exact = made.cost(at, order)
        assert same(order_cost(arrays, desk, at, whole(order), len(order)), exact), (at, order)
        done += exact < float("inf")
    assert done > 50


MEAL = {"minutes": 30, "earliest": monday("12:00"), "latest": monday("13:00")}


@pytest.mark.parametrize(
    ("changes", "jobs"),
    [
        ({"meal": MEAL}, [job("a", minutes=150, windows=[window("10:00", "12:30")])]),
        ({"meal": MEAL}, [job("a", minutes=300, windows=[window("09:00", "15:00")])]),
        ({"meal": MEAL, "end": monday("13:00")}, [job("a", minutes=90)]),
        ({"meal": MEAL, "start": monday("12:00")}, [job("a", minutes=90)]),
        ({"meal": MEAL | {"minutes": 0}}, [job("a", minutes=400)]),
        ({"max_work_minutes": 100}, [job("a", windows=[window("08:00", "09:00"), window("14:00", "15:00")])]),
        (
            {"meal": MEAL},
            [
                job("a", windows=[window("07:30", "09:00"), window("13:30", "15:00")]),
                job("b", "far", windows=[window("08:30", "11:00"), window("16:00", "17:30")]),
            ],
        ),
    ],
)
def test_edges_of_meal_and_limits_cost_the_same_both_ways(changes, jobs):
    made, arrays, desk = at_the_desk(board(week(*jobs, shifts=[shift(**changes)])))
    order = tuple(range(len(jobs)))
    assert same(order_cost(arrays, desk, 0, whole(order), len(order)), made.cost(0, order))


def test_a_label_that_is_nowhere_better_is_dropped_and_the_set_never_runs_over():
    _, _, desk = at_the_desk(board(week(job("a"))))
    figures, late = desk.figures, desk.late
    count = push(figures, late, 0, 0, 10, 5, 100, 0.0)
    assert push(figures, late, 0, count, 11, 5, 100, 0.0) == 1
    assert push(figures, late, 0, count, 9, 5, 100, 0.0) == 1
    assert figures[0, 0] == 9
    count = 1
    for later in range(2 * MOST):
        count = push(figures, late, 0, count, 10 + later, 5, 101 + later, 0.0)
    assert count == MOST


def test_a_surcharge_is_part_of_the_cost_both_ways():
    problem = read_problem(json.dumps(week(job("a"))))
    made, arrays, desk = at_the_desk(Board(problem, surcharge={(0, 0): 77.0}))
    assert order_cost(arrays, desk, 0, whole((0,)), 1) == pytest.approx(Board(problem).cost(0, (0,)) + 77)
    assert made.cost(0, (0,)) == pytest.approx(Board(problem).cost(0, (0,)) + 77)
