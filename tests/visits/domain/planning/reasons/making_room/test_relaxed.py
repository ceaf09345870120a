"""Timing in a changed problem is the timing of a board made anew for it."""

from dataclasses import replace

import pytest
from hypothesis import given

from tests.visits.domain.planning.hand_made import board, job, monday, shift, week, window
from tests.visits.domain.planning.reasons.weeks_in_hand import MANY, InHand
from tests.visits.domain.planning.small_weeks import small_weeks
from visits.domain.planning.board import Board
from visits.domain.planning.reasons.making_room.limits import LIMITS
from visits.domain.planning.reasons.making_room.relaxed import (
    extra_cost,
    relaxed_timing,
    timed_alone,
    with_job,
)


@MANY
@given(small_weeks(most_jobs=4, least_jobs=1))
def test_it_is_the_timing_of_a_board_of_the_changed_problem(problem):
    in_hand = InHand(problem)
    for at, order in enumerate(in_hand.week):
        for limit in LIMITS if order else ():
            changed = limit.change(in_hand.board.problem, at, order[0], 45)
            if changed is not None:
                anew = Board(changed).timing(at, order)
                assert relaxed_timing(in_hand.board, changed, at, order) == anew
                assert len(timed_alone(changed, at, order)) == len(order)


def test_extra_cost_is_against_the_shift_as_it_stands():
    made = board(week(job("a"), job("b")))
    assert extra_cost(made, ((0,),), made.problem, 0, (0, 1)) == 60 * 40
    assert extra_cost(made, ((0,),), made.problem, 0, (0, 1, 0, 1, 0, 1, 0, 1, 0, 1, 0, 1)) is None


def test_an_order_that_cannot_be_done_is_not_written_down():
    made = board(week(job("a", windows=[window("07:00", "07:30")])))
    with pytest.raises(ValueError, match="cannot be done"):
        timed_alone(made.problem, 0, (0,))


def test_a_promise_is_kept_when_its_shift_is_timed_alone():
    made = board(
        week(
            job("a", fixed={"shift": "ben", "start": monday("11:00")}),
            shifts=[shift(), shift(id="ben", crew="ben")],
        )
    )
    (stop,) = timed_alone(made.problem, 1, (0,))
    assert stop.start - made.problem.shifts[1].start == 4 * 36_000


def test_hygiene_counts_unless_told_not_to():
    made = board(week(job("a", "far"), job("b"), hygiene={"far": 1}))
    assert relaxed_timing(made, made.problem, 0, (0, 1)) is None
    assert relaxed_timing(made, made.problem, 0, (0, 1), mind_hygiene=False) is not None
    cleaner = with_job(made.problem, 0, replace(made.problem.jobs[0], hygiene=0))
    assert relaxed_timing(made, cleaner, 0, (0, 1)) is not None
