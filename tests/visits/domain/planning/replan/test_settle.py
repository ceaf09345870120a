"""What goes back makes room."""

from tests.visits.domain.planning.hand_made import board, job, shift, week
from visits.domain.planning.board import Board
from visits.domain.planning.replan.settle import settle

TUESDAY = shift(id="tue", start="2026-03-03T07:00:00+00:00", end="2026-03-03T17:30:00+00:00")
MONDAY_ONLY, TUESDAY_ONLY = ([{"start": s["start"], "end": s["end"]}] for s in (shift(), TUESDAY))


def two_long_days():
    moved = job("moved", minutes=400, windows=[*MONDAY_ONLY, *TUESDAY_ONLY])
    waiting = job("waiting", minutes=400, windows=TUESDAY_ONLY, leave_out_cost=90_000)
    plain = board(week(moved, waiting, shifts=[shift(), TUESDAY]))
    return Board(plain.problem, surcharge={(0, 1): 500})


def test_a_visit_that_goes_back_leaves_its_room_to_one_that_waits():
    made = two_long_days()
    assert settle(made, ((), (0,)), ((0,), ())) == ((0,), (1,))


def test_a_settled_week_stays():
    made = two_long_days()
    assert settle(made, ((0,), (1,)), ((0,), ())) == ((0,), (1,))


def test_what_is_not_worth_its_room_stays_out():
    made = board(week(job("a"), job("far", "far", leave_out_cost=1)))
    assert settle(made, ((0,),), ((0,),)) == ((0,),)
