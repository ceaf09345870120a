"""The one visit that would make room: cheapest by trying every move and every letting go."""

from hypothesis import given

from tests.visits.domain.planning.hand_made import board, job, monday, shift, week, window
from tests.visits.domain.planning.reasons.weeks_in_hand import MANY, NEVER, InHand, cost, inserted, ways_in
from tests.visits.domain.planning.small_weeks import small_weeks
from visits.domain.planning.reasons.making_room.by_others import others_that_make_room


def total(problem, orders):
    return sum(cost(problem, at, order) for at, order in enumerate(orders))


def swaps(problem, orders, out, closed=None):
    """(extra of moving, extra of letting go) for every other visit and every place of both; by brute force."""
    now = total(problem, orders)
    for at, order in enumerate(orders):
        for other in order:
            if at == closed or "fixed" in problem["jobs"][other]:
                continue
            rest = tuple(each for each in order if each != other)
            for tried in inserted(rest, out):
                changed = (*orders[:at], tried, *orders[at + 1 :])
                between = total(problem, changed) - now
                if between == NEVER:
                    continue
                moved = min((extra for extra, _, _ in ways_in(problem, changed, other)), default=NEVER)
                yield between + moved, between + problem["jobs"][other].get("leave_out_cost", NEVER)


@MANY
@given(small_weeks(most_jobs=4, least_jobs=2))
def test_the_move_and_the_letting_go_are_the_cheapest_there_are(problem):
    in_hand = InHand(problem)
    for out in in_hand.left_out:
        said = {r.code: r.figures for r in others_that_make_room(in_hand.board, in_hand.week, out)}
        tried = list(swaps(problem, in_hand.week, out))
        for code, part in (("move-one", 0), ("let-one-go", 1)):
            best = min((each[part] for each in tried), default=NEVER)
            assert (code in said) == (best < NEVER)
            assert code not in said or abs(said[code]["money"] - best) < 0.02


def test_the_figures_name_both_new_places():
    days = [shift(), shift(id="ben", crew="ben")]
    sits = job("a", minutes=180)
    wants = job("b", minutes=180, windows=[window("07:00", "11:00")], crews=["ann"])
    made = board(week(sits | {"windows": [window("07:00", "11:00")]}, wants, shifts=days))
    (move,) = others_that_make_room(made, ((0,), ()), 1)
    assert move.code == "move-one"
    assert move.figures["money"] == made.cost(1, (0,))
    assert (move.figures["shift"], move.figures["start"]) == ("mon", monday("07:20"))
    assert (move.figures["other"], move.figures["other_shift"]) == ("a", "ben")
    assert move.figures["other_start"] == monday("07:20")


def test_a_promise_is_neither_moved_nor_let_go():
    kept = job("a", fixed={"shift": "mon", "start": monday("09:00")}, leave_out_cost=1)
    wants = job("b", windows=[window("09:00", "10:00")])
    assert list(others_that_make_room(board(week(kept, wants)), ((0,),), 1)) == []
