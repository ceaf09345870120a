import json
from random import Random

from tests.bench.planning.made_up_weeks import made_up_week
from tests.visits.domain.planning.hand_made import board, job, week
from visits.domain.planning.board import Board
from visits.domain.planning.insertion import by_regret
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.repair_search import RepairSearch


def searched(steps, seed=1):
    made = Board(read_problem(json.dumps(made_up_week(14, 1, 3))))
    start = by_regret(made, [() for _ in made.problem.shifts], set(range(14)))
    search = RepairSearch(made, start, Random(seed))
    began = search.cost
    search.run(lambda done: done / steps)
    return began, search, made


def test_the_best_is_never_worse_than_the_start_and_costs_what_it_says():
    began, search, made = searched(40)
    assert search.best_cost <= began
    assert made.total(tuple(search.best)) == search.best_cost


def test_a_bad_order_is_mended():
    made = board(week(job("a", "far"), job("b", "near"), job("c", "far"), job("d", "near")))
    search = RepairSearch(made, [(0, 1, 2, 3)], Random(1))
    search.run(lambda done: done / 30)
    assert search.best_cost == 360 * 40 + 90 * 10


def test_the_same_dice_give_the_same_week():
    assert searched(15)[1].best == searched(15)[1].best
