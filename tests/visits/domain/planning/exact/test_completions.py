import json

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.random_examples import examples
from tests.visits.domain.planning.exact.priced_days import completed, reduced
from tests.visits.domain.planning.hand_made import board, job, week, window
from tests.visits.domain.planning.small_weeks import small_weeks
from visits.domain.planning.board import Board
from visits.domain.planning.exact.completions import cheapest, first_finish, least_day
from visits.domain.planning.measures import PER_MINUTE
from visits.domain.planning.read_problem import read_problem

PRICES = st.lists(st.sampled_from([0.0, 100.0, 900.0, 4000.0, 25000.0]), min_size=5, max_size=5)


@given(small_weeks(), PRICES)
@settings(max_examples=examples(120), deadline=None)
def test_no_day_undercuts_what_the_completions_say(problem, prices):
    made = Board(read_problem(json.dumps(problem)))
    all_days = reduced(made, prices)
    for at in range(len(made.problem.shifts)):
        day, back = completed(made, at, prices)
        bound = least_day(day, back, np.array(prices, dtype=np.float64))
        assert all(bound <= cost + 1e-5 for (each, _), cost in all_days.items() if each == at)


def test_without_waits_the_bound_is_the_cost_itself():
    made = board(week(job("a", "near"), job("b", "middle"), job("c", "far")))
    day, back = completed(made, 0, [1e5] * 3)
    assert least_day(day, back, np.full(3, 1e5)) == made.cost(0, (0, 1, 2)) - 3e5


def test_a_completion_lets_the_crew_be_as_late_as_the_next_window():
    made = board(week(job("a", "near"), job("b", "middle", windows=[window("09:00", "10:00")])))
    _, back = completed(made, 0, [0.0, 1e5])
    by = (9 * 60 - 7 * 60 - 20) * PER_MINUTE  # in time for 20 minutes of road to a start at 09:00
    assert cheapest(back, 2 * 0 + 1, by) < 0
    assert cheapest(back, 2 * 0 + 1, by + 1) > 0


def test_the_first_finish_is_after_the_drive_and_the_opening():
    made = board(week(job("a", "far"), job("b", windows=[window("09:00", "11:00")]), job("c", crews=["ben"])))
    day, _ = completed(made, 0, [0.0] * 3)
    assert [int(each) for each in first_finish(day)] == [120 * PER_MINUTE, 180 * PER_MINUTE, -1]
