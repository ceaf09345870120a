import json

import pytest

from tests.bench.planning.made_up_weeks import made_up_week
from tests.visits.domain.planning.hand_made import board, job, monday, shift, week
from visits.domain.planning.board import Board
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.swift.arrays import NEVER, week_arrays
from visits.domain.planning.swift.columns import CLASS, FED_LEAVE, MEAL, MOST_COWS, START


def test_every_opening_stands_in_its_cell():
    made = Board(read_problem(json.dumps(made_up_week(20, 2, 1))))
    arrays, jobs = week_arrays(made), 20
    zero = min(each.start for each in made.problem.shifts)
    for at, row in enumerate(made.openings):
        for job_at, options in enumerate(row):
            first, last = arrays.open_at[at * jobs + job_at], arrays.open_at[at * jobs + job_at + 1]
            assert [tuple(each) for each in arrays.opens[first:last]] == [
                (each.first - zero, each.last - zero) for each in options
            ]
            assert list(arrays.open_late[first:last]) == [each.late for each in options]


def test_a_shift_without_meal_or_limit_says_so():
    arrays = week_arrays(board(week(job("a"))))
    assert (arrays.shift[0, MEAL], arrays.shift[0, MOST_COWS]) == (-1, NEVER)
    assert arrays.shift[0, START] == 0


def test_a_crew_that_leaves_late_needs_no_meal_on_the_way():
    meal = {"minutes": 30, "earliest": monday("12:00"), "latest": monday("14:00")}
    arrays = week_arrays(board(week(job("a"), shifts=[shift(meal=meal)])))
    assert arrays.shift[0, FED_LEAVE] == 5.5 * 36_000


def test_shifts_alike_share_a_class_and_others_do_not():
    shifts = [shift(id="a"), shift(id="b"), shift(id="c", cost_fixed=5), shift(id="d", crew="ben")]
    arrays = week_arrays(board(week(job("x", crews=["ann"]), shifts=shifts)))
    assert list(arrays.shift[:, CLASS]) == [0, 0, 1, 2]


@pytest.mark.parametrize("size", [0, 1, 5])
def test_each_job_is_nearest_to_itself(size):
    arrays = week_arrays(board(week(*(job(f"j{at}", "far" if at % 2 else "near") for at in range(size)))))
    assert [row[0] for row in arrays.near] == list(range(size))
