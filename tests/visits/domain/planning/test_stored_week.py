import json

import pytest

from tests.bench.planning.made_up_weeks import made_up_week
from tests.visits.domain.planning.hand_made import job, week
from visits.domain.planning.board import Board
from visits.domain.planning.plan_week_problem import plan_week_problem
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.solve_limits import SolveLimits
from visits.domain.planning.stored_week import PlanBreaksRules, audited, document_of_week, week_of_document

PROBLEM = made_up_week(20, 2, 5)
TEXT = json.dumps(PROBLEM)
PLAN, _ = plan_week_problem(TEXT, limits=SolveLimits(iterations=20))


def test_a_plan_becomes_orders_and_the_same_plan_again():
    board = Board(read_problem(TEXT))
    again = document_of_week(TEXT, board, week_of_document(board.problem, PLAN))
    assert again["shifts"] == PLAN["shifts"]
    assert again["cost"] == PLAN["cost"]
    assert again["engine"] == "trimops-by-hand"
    assert again["bound"] is None


def test_what_the_problem_no_longer_has_is_passed_over():
    gone, kept = PLAN["shifts"][0]["stops"][0]["job"], PROBLEM["shifts"][:-1]
    smaller = PROBLEM | {"jobs": [each for each in PROBLEM["jobs"] if each["id"] != gone], "shifts": kept}
    fixed_there = {
        each["id"]
        for each in smaller["jobs"]
        if each.get("fixed", {}).get("shift") == PROBLEM["shifts"][-1]["id"]
    }
    smaller["jobs"] = [each for each in smaller["jobs"] if each["id"] not in fixed_there]
    problem = read_problem(json.dumps(smaller))
    orders = week_of_document(problem, PLAN)
    planned = {problem.jobs[at].id for order in orders for at in order}
    assert len(orders) == len(kept)
    assert planned
    assert gone not in planned


def test_a_start_document_is_never_made_worse():
    better, _ = plan_week_problem(TEXT, limits=SolveLimits(iterations=60, seed=2), start=PLAN)
    assert better["cost"]["total"] <= PLAN["cost"]["total"] + 0.01


def test_an_order_that_cannot_be_done_names_its_shift():
    text = json.dumps(week(job("a", minutes=600), job("b", minutes=600)))
    with pytest.raises(ValueError, match="mon: these visits do not fit"):
        document_of_week(text, Board(read_problem(text)), ((0, 1),))


def test_a_document_with_a_breach_goes_no_further():
    spoilt = json.loads(json.dumps(PLAN))
    spoilt["cost"]["total"] += 100
    with pytest.raises(PlanBreaksRules):
        audited(TEXT, spoilt)


def test_a_plan_without_shifts_is_an_empty_week():
    board = Board(read_problem(TEXT))
    assert week_of_document(board.problem, {}) == tuple(() for _ in board.problem.shifts)
