import json

import pytest

from tests.bench.planning.made_up_weeks import made_up_week
from visits.domain.planning.board import Board
from visits.domain.planning.exact.week_rows import WeekRows, days_of, left_by, weight_left_by, weight_of
from visits.domain.planning.read_problem import read_problem


@pytest.fixture
def board():
    """Four farms: j1 may be left out at 4000, j2 has a promise, the others must be planned."""
    week = made_up_week(4, 1, 1)
    for job in week["jobs"]:
        job.pop("leave_out_cost", None)
        job.pop("fixed", None)
    week["jobs"][0]["leave_out_cost"] = 4000
    start = week["jobs"][1]["windows"][0]["start"]
    week["jobs"][1]["fixed"] = {"shift": week["shifts"][0]["id"], "start": start}
    return Board(read_problem(json.dumps(week)))


def test_a_missing_job_weighs_more_than_all_promises_together(board):
    weights = [weight_of(board, job) for job in range(4)]
    assert weights == [0, 6, 5, 5]
    assert weights[1] - weights[2] == 1
    assert weights[2] > 4 * (weights[1] - weights[2])


def test_weights_rank_weeks_as_the_board_does(board):
    for job in range(4):
        assert board.out_cost(job) == weight_of(board, job) * board.promise_price + (
            board.problem.jobs[job].leave_out_cost or 0
        )


def test_what_a_week_leaves_out_and_uses_is_told(board):
    week = ((), (2, 0), (), (), ())
    assert left_by(board, week) == [1, 3]
    assert weight_left_by(board, week) == 11
    assert days_of(week) == [(1, (2, 0))]


def test_a_job_too_heavy_to_be_left_out_has_its_column_shut(board):
    rows = WeekRows(board, 5)
    assert [rows.left_out(job).most for job in range(4)] == [1.0, 0.0, 1.0, 1.0]
    assert rows.left_out(0).cost == 4000


def test_a_price_of_weight_falls_on_jobs_that_must_be_planned_only(board):
    rows = WeekRows(board, 11, 100.0)
    assert [rows.left_out(job).cost for job in range(4)] == [4000, 600, 500, 500]


def test_a_day_names_its_jobs_and_its_shift_and_counts_a_job_named_twice(board):
    column = WeekRows(board, 0).day(2, (3, 1, 3), 70.0)
    assert column.cost == 70.0
    assert dict(zip(column.rows, column.weights, strict=True)) == {3: 2.0, 1: 1.0, 4 + 2: 1.0}


def test_the_model_starts_with_one_column_a_job(board):
    assert len(WeekRows(board, 0).model().columns) == 4
