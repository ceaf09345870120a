from datetime import date

import pytest

from visits.domain.crush_order import ExpectedCow, crush_order
from visits.domain.mobility import MobilityScale, ScoreOutsideScale

UK, SPRECHER = MobilityScale.UK, MobilityScale.SPRECHER
VERY_LAME = ExpectedCow(1, "90", ("lame",), UK, 3)
LAME = ExpectedCow(2, "80", ("lame",), UK, 2)
DUE = ExpectedCow(3, "70", ("block",), due_until=date(2026, 3, 3))
OVERDUE = ExpectedCow(4, "60", ("block",), due_until=date(2026, 2, 3))
ASKED = ExpectedCow(5, "50", ("long toes",), UK, 1)


def test_lame_cows_come_first_then_what_is_due_then_the_rest():
    cows = [ASKED, DUE, LAME, OVERDUE, VERY_LAME]
    assert crush_order(cows) == [VERY_LAME, LAME, OVERDUE, DUE, ASKED]
    assert crush_order(reversed(cows)) == crush_order(cows)


def test_of_two_alike_the_lower_number_comes_first_as_a_number():
    ninth, tenth = ExpectedCow(7, "9", ()), ExpectedCow(6, "10", ())
    assert crush_order([tenth, ninth]) == [ninth, tenth]


def test_two_scales_are_compared_only_by_how_soon_each_wants_a_look():
    same_day, soon = ExpectedCow(8, "2", (), SPRECHER, 4), ExpectedCow(9, "1", (), UK, 2)
    assert crush_order([soon, same_day]) == [same_day, soon]
    assert crush_order([VERY_LAME, same_day]) == [same_day, VERY_LAME], "the same day, so by number"


def test_a_cow_is_lame_by_her_own_scale():
    assert ExpectedCow(1, "1", (), UK, 2).is_lame
    assert not ExpectedCow(1, "1", (), SPRECHER, 2).is_lame
    assert not ExpectedCow(1, "1", ()).is_lame
    with pytest.raises(ScoreOutsideScale):
        assert ExpectedCow(1, "1", (), UK, 5).is_lame
