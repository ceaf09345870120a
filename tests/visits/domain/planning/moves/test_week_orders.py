"""Taking a stop out of a week and putting it somewhere else."""

import pytest

from visits.domain.planning.moves.week_orders import place_of, with_stop, without

WEEK = ((0, 1, 2), (), (3,))


def test_a_stop_taken_out_leaves_the_others_in_their_order():
    assert without(WEEK, 1) == ((0, 2), (), (3,))
    assert without(WEEK, 9) == WEEK


def test_a_position_counts_among_the_other_stops():
    assert with_stop(WEEK, 0, 0, 2) == ((1, 2, 0), (), (3,))
    assert with_stop(WEEK, 3, 0, 1) == ((0, 3, 1, 2), (), ())
    assert with_stop(WEEK, 9, 1, 0) == ((0, 1, 2), (9,), (3,))


def test_a_position_that_is_not_there_is_refused():
    for position in (-1, 3):
        with pytest.raises(IndexError):
            with_stop(WEEK, 0, 0, position)


def test_where_a_stop_is_or_that_it_is_left_out():
    assert place_of(WEEK, 2) == (0, 2)
    assert place_of(WEEK, 9) is None
