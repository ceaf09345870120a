import json
from random import Random

import pytest
from hypothesis import given, settings

from tests.bench.planning.made_up_weeks import made_up_week
from tests.random_examples import examples
from tests.visits.domain.planning.exact.whole_pools import whole_pool
from tests.visits.domain.planning.hand_made import board, job, week
from tests.visits.domain.planning.small_weeks import small_weeks
from visits.domain.planning.board import Board
from visits.domain.planning.exact.choose_days import choose_days
from visits.domain.planning.exact_small import best_week
from visits.domain.planning.insertion import by_regret
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.repair_search import RepairSearch


def board_of(problem):
    return Board(read_problem(json.dumps(problem)))


def nothing_planned(board):
    return tuple(() for _ in board.problem.shifts)


@given(small_weeks())
@settings(max_examples=examples(100), deadline=None)
def test_from_all_days_the_best_week_of_a_small_problem_is_chosen(problem):
    made = board_of(problem)
    found = choose_days(made, whole_pool(made), nothing_planned(made), 10)
    assert made.total(found) == pytest.approx(made.total(best_week(made)), abs=1e-6)
    done = [job for order in found for job in order]
    assert len(done) == len(set(done))


@given(small_weeks())
@settings(max_examples=30, deadline=None)
def test_with_an_empty_pool_the_start_stays_or_loses_days_that_do_not_pay(problem):
    made = board_of(problem)
    start = tuple(by_regret(made, nothing_planned(made), set(range(len(made.problem.jobs)))))
    found = choose_days(made, {}, start, 10)
    assert all(order in ((), start[shift]) for shift, order in enumerate(found))
    assert made.total(found) <= made.total(start)


@pytest.fixture(scope="module")
def seen():
    """A made week of 20 farms, its first plan, the plan and all days of a short search."""
    made = board_of(made_up_week(20, 1, 5))
    start = by_regret(made, nothing_planned(made), set(range(20)))
    search = RepairSearch(made, start, Random(1))
    search.run(lambda steps: steps / 150)
    pool = {}
    for (shift, order), cost in made.known.items():
        if order and cost < pool.get((shift, frozenset(order)), (cost + 1,))[0]:
            pool[shift, frozenset(order)] = cost, order
    return made, tuple(start), tuple(search.best), pool


def test_the_choice_is_no_dearer_than_a_week_whose_days_are_in_the_pool(seen):
    made, start, searched, pool = seen
    found = choose_days(made, pool, start, 10)
    assert made.total(searched) < made.total(start)
    assert made.total(found) <= made.total(searched) + 1e-6


def test_with_a_branch_limit_the_same_pool_gives_the_same_week(seen):
    made, start, _, pool = seen
    assert choose_days(made, pool, start, 0, nodes=50) == choose_days(made, pool, start, 0, nodes=50)


def test_without_any_time_the_start_comes_back(seen):
    made, start, _, pool = seen
    assert choose_days(made, pool, start, 0) == start


def test_a_cheaper_order_of_the_same_jobs_takes_the_place_of_the_start_s_own():
    made = board(week(job("a", "near"), job("b", "middle"), job("c", "far")))
    pool = {(0, frozenset({0, 1, 2})): (made.cost(0, (0, 1, 2)), (0, 1, 2))}
    assert made.cost(0, (1, 0, 2)) > made.cost(0, (0, 1, 2))
    assert choose_days(made, pool, ((1, 0, 2),), 10) == ((0, 1, 2),)
