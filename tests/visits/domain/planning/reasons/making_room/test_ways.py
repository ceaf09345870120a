"""What makes room, tried out: each claim holds with the limit changed by brute force, and one step less is too little.

On these weeks every figure is a multiple of half an hour, so half an hour is the step.
"""

from hypothesis import given

from tests.visits.domain.planning.brute_force import STEP
from tests.visits.domain.planning.hand_made import board, job, week, window
from tests.visits.domain.planning.reasons.making_room.relaxed_week import fits
from tests.visits.domain.planning.reasons.weeks_in_hand import MANY, InHand, ways_in
from tests.visits.domain.planning.small_weeks import small_weeks
from visits.domain.planning.reasons.making_room.ways import ways_to_make_room

BY_MINUTES = (
    "window-end",
    "window-start",
    "work-limit",
    "shift-end",
    "shift-start",
    "longer-day",
    "meal",
    "shorter-visit",
)
LESS = {"longer-day": ("work-limit", "shift-end")}
MOST = 240


def said_of(in_hand, out):
    return {r.code: r.figures for r in ways_to_make_room(in_hand.board, in_hand.week, out)}


def same_place(figures, found, in_hand, out):
    """Whether the place named is one of those found."""
    names = in_hand.names
    for _, at, order in found:
        place = order.index(out)
        behind = names[order[place - 1]] if place else None
        if (in_hand.shifts[at], behind) == (figures["shift"], figures["behind"]):
            return True
    return False


@MANY
@given(small_weeks(most_jobs=5, least_jobs=2))
def test_each_limit_in_minutes_gives_way_by_the_least_that_makes_room(problem):
    in_hand = InHand(problem)
    for out in in_hand.left_out:
        said = said_of(in_hand, out)
        if said.keys() & {"price", "fits"} or "fixed" in problem["jobs"][out]:
            continue
        for code in BY_MINUTES:
            if code in said:
                minutes = said[code]["minutes"]
                assert minutes % STEP == 0
                enough = fits(problem, code, in_hand.week, out, minutes)
                assert same_place(said[code], enough, in_hand, out)
                assert abs(said[code]["money"] - min(extra for extra, _, _ in enough)) < 0.02
                assert not fits(problem, code, in_hand.week, out, minutes - STEP)
            elif not said.keys() & set(LESS.get(code, ())):
                assert not fits(problem, code, in_hand.week, out, MOST)


@MANY
@given(small_weeks(most_jobs=5, least_jobs=2))
def test_cows_hygiene_and_other_terms_are_named_where_they_alone_are_in_the_way(problem):
    in_hand = InHand(problem)
    for out in in_hand.left_out:
        said = said_of(in_hand, out)
        if said.keys() & {"price", "fits"}:
            continue
        promised = "fixed" in problem["jobs"][out]
        for code in ("hygiene-order", "other-hours", "any-crew", "no-promise"):
            named = code in ("no-promise", "hygiene-order") if promised else code != "no-promise"
            found = fits(problem, code, in_hand.week, out) if named else []
            assert (code in said) == bool(found)
            assert not found or same_place(said[code], found, in_hand, out)
        if "cows-limit" in said:
            cows = said["cows-limit"]["cows"]
            assert same_place(
                said["cows-limit"], fits(problem, "cows-limit", in_hand.week, out, cows), in_hand, out
            )
            assert not fits(problem, "cows-limit", in_hand.week, out, cows - 1)
        else:
            assert not fits(problem, "cows-limit", in_hand.week, out, 1000)
        away = any(in_hand.board.openings[at][out] for at in range(len(in_hand.week)))
        assert ("van-of-its-own" in said) == (said.keys() == {"van-of-its-own"} or not away)


@MANY
@given(small_weeks(most_jobs=5, least_jobs=2))
def test_a_visit_that_fits_has_its_price_and_no_other_way(problem):
    in_hand = InHand(problem)
    for out in in_hand.left_out:
        said, found = said_of(in_hand, out), ways_in(problem, in_hand.week, out)
        assert bool(found) == bool(said.keys() & {"price", "fits"})
        if found:
            worth = problem["jobs"][out]["leave_out_cost"]
            best = min(extra for extra, _, _ in found)
            assert said.keys() == {"price"}
            assert abs(said["price"]["money"] - best) < 0.02
            assert abs(said["price"]["more"] - (best - worth)) < 0.02


def test_what_no_single_change_helps_needs_a_van_of_its_own():
    block = job("a", windows=[window("07:20", "17:00")], minutes=580)
    far = job("b", "far", minutes=300, windows=[window("09:00", "14:00")])
    made = board(week(block, far, travel=week()["travel"]))
    (way,) = ways_to_make_room(made, ((0,),), 1)
    assert (way.code, way.figures["minutes"], way.figures["other_ways"]) == ("van-of-its-own", 420, 0)


def test_a_visit_that_fits_without_a_price_is_told_to_fit():
    made = board(week(job("a")))
    (way,) = ways_to_make_room(made, ((),), 0)
    assert (way.code, way.figures["shift"], way.figures["behind"]) == ("fits", "mon", None)
