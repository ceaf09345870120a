"""Which writing shows, whatever came first."""

from datetime import UTC, datetime, timedelta
from itertools import permutations
from uuid import UUID

import pytest
from hypothesis import given
from hypothesis import strategies as st

from visits.domain.crush_merge import Clocks, PlacedWriting, group_of, merge, place

NOON = datetime(2026, 3, 3, 12, tzinfo=UTC)
HOUR, MINUTE, MOMENT = timedelta(hours=1), timedelta(minutes=1), timedelta(microseconds=1)


def uid(number):
    return UUID(int=number)


def written(number, after=None, phone=1, at=NOON, group="cow 1"):
    return PlacedWriting(uid(number), group, uid(after) if after else None, uid(1000 + phone), at)


def beside(standing, number):
    return [other.int for other in standing[uid(number)].beside]


@pytest.mark.parametrize("wrong", [-7 * HOUR, timedelta(0), 3 * HOUR, timedelta(days=-20000)])
def test_a_clock_that_is_wrong_cancels_out(wrong):
    clocks = Clocks(NOON + wrong - 10 * MINUTE, NOON + wrong, None, NOON)
    assert place(clocks) == NOON - 10 * MINUTE


def test_a_clock_that_jumped_back_before_sending_gives_no_age_at_all():
    assert place(Clocks(NOON + 3 * HOUR, NOON, None, NOON)) == NOON


def test_a_clock_that_jumped_ahead_is_held_by_the_last_answer_the_phone_had():
    assert place(Clocks(NOON - 5 * HOUR, NOON, NOON - HOUR, NOON)) == NOON - HOUR


def test_nothing_is_placed_after_its_arrival_whatever_the_phone_says():
    assert place(Clocks(NOON, NOON, NOON + HOUR, NOON)) == NOON


def test_the_greatest_age_is_bounded_so_that_no_sum_leaves_the_calendar():
    ages_ago = datetime(1970, 1, 1, tzinfo=UTC)
    assert place(Clocks(ages_ago, datetime(2999, 1, 1, tzinfo=UTC), None, NOON)).year == 2016


def test_the_later_one_shows_and_both_are_told_apart_by_their_time():
    standing = merge([written(1), written(2, phone=2, at=NOON + MINUTE)])
    assert standing[uid(1)].shows == standing[uid(2)].shows == uid(2)
    assert standing[uid(1)].effective == NOON


def test_of_two_at_the_same_moment_the_greater_uid_shows():
    assert merge([written(2), written(1, phone=2)])[uid(1)].shows == uid(2)


def test_an_edit_counts_as_later_than_what_it_edits_even_by_a_clock_that_says_otherwise():
    standing = merge([written(1), written(2, after=1, at=NOON - HOUR), written(3, after=2, at=NOON - HOUR)])
    assert standing[uid(1)].shows == uid(3)
    assert standing[uid(3)].effective == NOON + 2 * MOMENT


def test_an_edit_of_something_that_has_not_arrived_stands_by_its_own_time():
    assert merge([written(2, after=99)])[uid(2)].effective == NOON


def test_an_edit_is_of_when_the_thing_was_first_put_down():
    standing = merge([written(1), written(2, after=1, at=NOON + 24 * HOUR), written(3, at=NOON + HOUR)])
    assert [standing[uid(n)].begun for n in (1, 2, 3)] == [NOON, NOON, NOON + HOUR]


def test_things_do_not_mix():
    standing = merge([written(1), written(2, at=NOON + HOUR, group="cow 2")])
    assert standing[uid(1)].shows == uid(1)


def test_an_edit_of_another_thing_hangs_on_nothing():
    standing = merge([written(1, group="cow 2"), written(2, after=1, at=NOON - HOUR)])
    assert standing[uid(2)].effective == NOON - HOUR


def test_what_two_phones_wrote_unseen_stands_beside_each_other():
    standing = merge([written(1), written(2, after=1), written(3, after=1, phone=2)])
    assert (beside(standing, 1), beside(standing, 2), beside(standing, 3)) == ([], [3], [2])


def test_what_one_phone_wrote_twice_is_nobody_elses_affair():
    assert beside(merge([written(1), written(2)]), 1) == []


def test_an_edit_of_what_the_other_wrote_has_seen_it():
    assert beside(merge([written(1), written(2, after=1, phone=2)]), 2) == []


@pytest.mark.parametrize("ring", [[written(1, after=1)], [written(1, after=2), written(2, after=1)]])
def test_edits_that_go_round_in_a_ring_count_as_unconnected(ring):
    assert all(standing.effective == NOON for standing in merge(ring).values())


def test_a_cow_is_one_thing_for_every_phone_and_all_else_goes_by_its_record():
    assert group_of("cow", uid(5), 412) == group_of("cow", uid(6), 412)
    assert group_of("wash", uid(5), None) != group_of("wash", uid(6), None)


WRITINGS = st.lists(
    st.builds(
        lambda number, after, phone, minutes, group: written(
            number, after, phone, NOON + minutes * MINUTE, f"cow {group}"
        ),
        st.integers(1, 8),
        st.none() | st.integers(1, 9),
        st.integers(1, 2),
        st.integers(0, 2),
        st.integers(1, 2),
    ),
    unique_by=lambda writing: writing.uid,
    max_size=8,
)


@given(WRITINGS, st.randoms())
def test_the_order_of_arrival_makes_no_difference(writings, chance):
    shuffled = list(writings)
    chance.shuffle(shuffled)
    assert merge(shuffled) == merge(writings)


@given(WRITINGS)
def test_one_of_each_thing_shows_and_beside_is_mutual(writings):
    standing = merge(writings)
    groups = {writing.uid: writing.group for writing in writings}
    for one, place_ in standing.items():
        assert groups[place_.shows] == groups[one]
        assert standing[place_.shows].effective == max(
            standing[other].effective for other in groups if groups[other] == groups[one]
        )
        assert all(one in standing[other].beside for other in place_.beside)


def test_all_orders_of_three_end_alike():
    three = [written(1), written(2, after=1, phone=2, at=NOON - HOUR), written(3, at=NOON + MOMENT)]
    ends = [merge(order) for order in permutations(three)]
    assert all(end == ends[0] for end in ends)
