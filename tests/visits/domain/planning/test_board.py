from math import inf

import pytest

from tests.visits.domain.planning.hand_made import board, job, monday, shift, week, window


def test_cost_is_work_road_and_the_fixed_part():
    made = board(week(job("a"), shifts=[shift(cost_fixed=7)]))
    assert made.cost(0, (0,)) == pytest.approx(100 * 40 + 30 * 10 + 7)
    assert made.cost(0, ()) == 0


def test_cows_and_hygiene_are_asked_before_the_clock():
    made = board(week(job("a", cows=5), job("b", "far", cows=5), shifts=[shift(max_cows=9)]))
    assert made.cost(0, (0, 1)) == inf
    made = board(week(job("a"), job("b", "far"), hygiene={"near": 1}))
    assert (made.cost(0, (0, 1)), made.cost(0, (1, 0)) < inf) == (inf, True)


def test_the_order_of_importance_is_promise_then_must_then_any_cost():
    kept = {"shift": "mon", "start": monday("09:00")}
    made = board(week(job("a", fixed=kept, leave_out_cost=0), job("b"), job("c", leave_out_cost=10**8)))
    promise, must, choice = (made.out_cost(at) for at in range(3))
    assert promise > must > 2 * choice
    assert 2 * must > promise + choice


def test_a_total_holds_shifts_and_what_is_left_out():
    made = board(week(job("a"), job("b", leave_out_cost=55)))
    assert made.total(((0,),)) == pytest.approx(4300 + 55)


def test_a_job_is_at_home_only_in_shifts_with_an_opening():
    made = board(week(job("a", crews=["ben"]), job("b"), shifts=[shift(), shift(id="m2", crew="ben")]))
    assert made.homes == [[1], [0, 1]]


def test_a_floor_is_never_above_the_cost():
    made = board(week(job("a"), job("b", "far", windows=[window("12:00", "14:00")])))
    assert made.floor(0, (0, 1)) <= made.cost(0, (0, 1))
    assert made.floor(0, (0,)) == pytest.approx(made.cost(0, (0,)))
