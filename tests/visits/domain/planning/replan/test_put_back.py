"""What is not worth its price goes back."""

from tests.visits.domain.planning.hand_made import board, job, shift, week
from visits.domain.planning.board import Board
from visits.domain.planning.replan.put_back import put_back

TUESDAY = shift(id="tue", start="2026-03-03T07:00:00+00:00", end="2026-03-03T17:30:00+00:00")
BOTH = [{"start": s["start"], "end": s["end"]} for s in (shift(), TUESDAY)]


def two_days(*names):
    plain = board(week(*(job(name, windows=BOTH) for name in names), shifts=[shift(), TUESDAY]))
    return Board(plain.problem, surcharge={(at, 1): 500 for at in range(len(names))})


def test_a_visit_moved_for_nothing_goes_back():
    assert put_back(two_days("a"), ((), (0,)), ((0,), ())) == ((0,), ())


def test_one_that_saves_more_than_its_price_stays_away():
    made = two_days("a", "b")
    # Alone it would be a round of its own on Monday; with the other, which must be on Tuesday, it is on the way.
    assert put_back(made, ((), (0, 1)), ((0,), (1,))) == ((), (0, 1))


def test_a_day_turned_round_for_nothing_goes_on_as_before():
    made = board(week(job("near"), job("far", "far"), job("new", "middle")))
    assert made.cost(0, (0, 2, 1)) == made.cost(0, (1, 2, 0))
    assert put_back(made, ((1, 2, 0),), ((0, 1),)) == ((0, 2, 1),)


def test_a_day_that_must_be_turned_round_stays_so():
    late = job("late", windows=[{"start": BOTH[0]["start"][:11] + "15:00:00+00:00", "end": BOTH[0]["end"]}])
    made = board(week(late, job("far", "far", 120)))
    assert put_back(made, ((1, 0),), ((0, 1),)) == ((1, 0),)


def test_a_visit_that_was_in_no_plan_stays_where_it_is():
    assert put_back(two_days("a"), ((), (0,)), ((), ())) == ((), (0,))


def test_one_whose_old_day_has_no_room_any_more_stays_away():
    made = board(week(job("a", windows=[BOTH[1]]), shifts=[shift(), TUESDAY]))
    assert put_back(made, ((), (0,)), ((0,), ())) == ((), (0,))
