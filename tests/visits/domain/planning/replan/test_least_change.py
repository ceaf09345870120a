"""The nearest drivable week: by hand where one visit must be pushed out, by lot that it can always be driven."""

import json
from math import inf

from hypothesis import given, settings

from tests.random_examples import examples
from tests.visits.domain.planning.hand_made import board, job, monday, shift, week, window
from tests.visits.domain.planning.small_weeks import small_weeks
from visits.domain.planning.board import Board
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.replan.least_change import least_change

TUESDAY = shift(id="tue", start="2026-03-03T07:00:00+00:00", end="2026-03-03T17:30:00+00:00")
TUESDAY_TOO = {"start": "2026-03-03T07:00:00+00:00", "end": "2026-03-03T17:30:00+00:00"}


@settings(max_examples=examples(200), deadline=None)
@given(small_weeks())
def test_whatever_the_diary_says_the_week_can_be_driven(problem):
    made = Board(read_problem(json.dumps(problem)))
    jobs, shifts = range(len(made.problem.jobs)), len(made.problem.shifts)
    diary = tuple(tuple(at for at in jobs if at % shifts == shift) for shift in range(shifts))
    found = least_change(made, diary)
    assert all(made.cost(at, order) < inf for at, order in enumerate(found))
    assert len([job for order in found for job in order]) == len({job for order in found for job in order})


def test_a_week_that_can_be_driven_stays():
    made = board(week(job("a"), job("b", "far")))
    assert least_change(made, ((0, 1),)) == ((0, 1),)


def test_a_full_day_takes_an_urgent_visit_by_pushing_one_to_another_day():
    long_day = {"minutes": 480, "leave_out_cost": 50_000}
    loose = job("loose", windows=[window(), TUESDAY_TOO], **long_day)
    lame = job("lame", minutes=300, windows=[window("08:00", "14:00")])
    made = board(week(loose, lame, shifts=[shift(), TUESDAY]))
    assert least_change(made, ((0,), ())) == ((1,), (0,))


def test_the_visit_in_the_way_goes_and_the_promised_one_stays():
    promised = job("promised", minutes=300, fixed={"shift": "mon", "start": monday("09:00")})
    loose = job("loose", minutes=500, leave_out_cost=90_000)
    made = board(week(promised, loose))
    assert least_change(made, ((0, 1),)) == ((0,),)


def test_of_three_too_many_those_that_follow_their_promised_one_stay():
    jobs = [job(f"j{n}", minutes=250, leave_out_cost=9_000) for n in range(5)]
    promised = job("promised", minutes=60, fixed={"shift": "mon", "start": monday("16:00")})
    made = board(week(*jobs, promised))
    (order,) = least_change(made, ((0, 1, 2, 3, 4, 5),))
    assert 5 in order
    assert len(order) == 3
