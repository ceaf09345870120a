"""The timing of one order, against trying every leaving time and meal on a grid (see brute_force)."""

import json

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.random_examples import examples
from tests.visits.domain.planning.brute_force import cheapest_round
from tests.visits.domain.planning.hand_made import board, job, monday, shift, week, window
from tests.visits.domain.planning.small_weeks import small_weeks
from visits.domain.planning.board import Board
from visits.domain.planning.problem import Meal
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.retime import meal_end


def minutes(problem, order):
    """(leave, return) in minutes after seven."""
    made = board(problem)
    timing = made.timing(0, order)
    zero = made.problem.shifts[0].start
    return (timing.leave - zero) / 600, (timing.back - zero) / 600


def test_a_wait_is_spent_at_home_by_leaving_late():
    assert minutes(week(job("a", windows=[window("09:00", "12:00")])), (0,)) == (100, 200)


def test_of_equal_costs_the_earliest_return_is_taken():
    assert minutes(week(job("a"), job("b")), (0, 1)) == (0, 160)


def test_without_a_wage_the_return_is_early_and_the_leaving_late():
    day = shift(cost_per_work_hour=0)
    assert minutes(week(job("a", windows=[window("09:00", "12:00")]), shifts=[day]), (0,)) == (100, 200)


def test_a_later_window_is_taken_where_it_saves_a_wait():
    first = job("a", windows=[window("07:00", "09:00"), window("12:00", "13:30")])
    assert minutes(week(first, job("b", windows=[window("13:00", "15:00")])), (0, 1)) == (280, 440)


def test_a_meal_fits_into_a_wait_without_costing_time():
    meal = {"minutes": 30, "earliest": monday("11:00"), "latest": monday("11:10")}
    first = job("a", windows=[window("09:00", "10:10")])
    day = shift(meal=meal)
    assert minutes(week(first, job("b", windows=[window("11:40", "13:00")]), shifts=[day]), (0, 1)) == (
        110,
        360,
    )


def test_the_least_work_may_need_a_latest_leaving_before_an_opening_closes():
    first = job("a", windows=[window("08:00", "09:30")])
    assert minutes(week(first, job("b", windows=[window("11:00", "12:00")])), (0, 1)) == (70, 320)


def test_an_order_that_cannot_be_done_has_no_timing():
    late = week(job("a", windows=[window("07:00", "08:19")]))
    assert board(late).timing(0, (0,)) is None


def test_a_meal_may_begin_at_the_very_last_moment():
    meal = Meal(length=300, earliest=500, latest=1000)
    assert meal_end(800, 200, meal, at_first=True) == 1300
    assert meal_end(801, 200, meal, at_first=True) is None
    assert meal_end(1000, 200, meal, at_first=False) == 1500
    assert meal_end(1001, 200, meal, at_first=False) is None


def test_a_meal_after_the_last_job_may_begin_at_the_very_last_moment():
    day = shift(meal={"minutes": 30, "earliest": monday("12:00"), "latest": monday("12:30")})
    exact = job("a", "far", windows=[window("08:00", "12:30")], minutes=270)
    assert minutes(week(exact, shifts=[day]), (0,)) == (0, 420)


@settings(max_examples=examples(150), deadline=None, derandomize=True)
@given(small_weeks(most_jobs=4), st.randoms(use_true_random=False))
def test_any_order_costs_what_trying_everything_finds(problem, dice):
    made = Board(read_problem(json.dumps(problem)))
    order = list(range(len(problem["jobs"])))
    dice.shuffle(order)
    order = tuple(order[: dice.randint(0, len(order))])
    jobs = [problem["jobs"][at] for at in order]
    day = problem["shifts"][0]
    if not order or any(day["crew"] not in each.get("crews", [day["crew"]]) for each in jobs):
        return
    expected = cheapest_round(problem, day, jobs)
    found = made.cost(0, order)
    if expected is None or expected == float("inf"):
        assert found == float("inf")
    else:
        assert abs(found - expected) < 0.001
