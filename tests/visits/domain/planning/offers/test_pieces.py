from hypothesis import given
from hypothesis import strategies as st

from visits.domain.planning.offers.pieces import NEVER, Piece, chained, meal_on_drive, up_to, visit
from visits.domain.planning.problem import Meal
from visits.domain.planning.retime import meal_end


def at(pieces, moment):
    for first, last, add, flows in pieces:
        if first <= moment <= last:
            return moment + add if flows else add
    return None


SPANS = st.lists(st.integers(0, 60), min_size=2, max_size=6, unique=True).map(
    lambda edges: [tuple(sorted(edges)[n : n + 2]) for n in range(0, len(edges) // 2 * 2, 2)]
)


def test_whoever_comes_early_waits_and_whoever_comes_late_is_turned_away():
    gate = visit([(10, 12), (20, 25)], after=5)
    assert [at(gate, moment) for moment in (0, 10, 12, 13, 20, 25, 26)] == [15, 15, 17, 25, 25, 30, None]


def test_the_limit_is_the_last_moment():
    assert (at(up_to(7), 7), at(up_to(7), 8)) == (7, None)


@given(SPANS, SPANS, st.integers(0, 9), st.integers(0, 9))
def test_two_functions_chained_are_one_after_the_other(first, then, short, long):
    one, two = visit(first, short), visit(then, long)
    both = chained(two, one)
    for moment in range(-2, 62):
        middle = at(one, moment)
        assert at(both, moment) == (None if middle is None else at(two, middle))


@given(st.integers(0, 9), st.integers(0, 5), st.integers(10, 20), st.integers(0, 10), st.booleans())
def test_a_meal_on_the_drive_ends_when_the_timing_says(drive, length, earliest, more, to_base):
    latest = earliest + more
    eaten = meal_on_drive(drive, (length, earliest, latest), to_base=to_base)
    for free in range(-5, 40):
        meal = Meal(length, earliest, latest)
        if to_base:
            begin = max(free, earliest)
            expected = begin + length + drive if begin <= latest else None
        else:
            expected = meal_end(free, drive, meal, at_first=False)
        assert at(eaten, free) == expected, free


def test_pieces_are_in_order_and_do_not_overlap():
    made = visit([(1, 4), (5, 9)], 0)
    assert made == [Piece(-NEVER, 0, 1, False), Piece(1, 4, 0, True), Piece(5, 9, 0, True)]
