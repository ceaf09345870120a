"""The bench's own weeks and rules of thumb, so that its ratios mean something."""

import json

import pytest

from tests.bench.planning.head_rules import bearings_of, nearest_by_due_date, same_area_same_day
from tests.bench.planning.made_up_weeks import made_up_week
from tests.bench.planning.week_figures import PlanWithBreach, figures
from visits.domain.planning.board import Board
from visits.domain.planning.build_plan import build_plan
from visits.domain.planning.plan_to_json import plan_to_json
from visits.domain.planning.read_problem import read_problem


def plan_of(board, week):
    return plan_to_json(build_plan(board, week, engine="head", seed=0, seconds=0, proven=False))


def test_the_same_seed_makes_the_same_week_and_another_seed_another():
    assert made_up_week(15, 1, 3) == made_up_week(15, 1, 3)
    assert made_up_week(15, 1, 3) != made_up_week(15, 1, 4)


@pytest.mark.parametrize(("farms", "vans"), [(12, 1), (30, 2)])
def test_both_rules_of_thumb_fill_a_week_that_passes_the_audit(farms, vans):
    problem = made_up_week(farms, vans, 1)
    board = Board(read_problem(json.dumps(problem)))
    for week in (nearest_by_due_date(board), same_area_same_day(board, bearings_of(problem))):
        assert sum(map(len, week)) >= 0.7 * farms
        assert figures(problem, plan_of(board, week)).cost == pytest.approx(
            board.total(week) % board.missing_price
        )


def test_a_promise_stays_in_the_diary():
    problem = made_up_week(30, 2, 1)
    promised = {job["id"] for job in problem["jobs"] if "fixed" in job}
    plan = plan_of(board := Board(read_problem(json.dumps(problem))), nearest_by_due_date(board))
    assert promised
    assert promised <= {stop["job"] for shift in plan["shifts"] for stop in shift["stops"]}


def test_a_plan_with_a_breach_gives_no_figures():
    problem = made_up_week(12, 1, 1)
    board = Board(read_problem(json.dumps(problem)))
    plan = plan_of(board, nearest_by_due_date(board))
    plan["cost"]["total"] -= 100
    with pytest.raises(PlanWithBreach):
        figures(problem, plan)
