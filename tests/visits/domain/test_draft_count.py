from datetime import date

from visits.domain.draft_count import count_with, count_without
from visits.domain.draft_order import DraftCandidate, draft_order

DAY = date(2026, 3, 2)


def listed(cows, count):
    return draft_order([DraftCandidate(n, str(n), is_asked=True) for n in range(1, cows + 1)], DAY, count)


def test_a_full_list_gets_one_cow_shorter_or_longer():
    assert count_without(5, listed(5, 5), 3) == 4
    assert count_with(5, listed(5, 5), 99) == 6


def test_a_list_with_places_left_keeps_its_count():
    assert count_without(9, listed(5, 9), 3) == 9
    assert count_with(9, listed(5, 9), 99) == 9


def test_a_cow_who_was_not_on_it_leaves_it_as_long_as_it_was_and_one_who_is_does_not_come_twice():
    assert count_without(5, listed(5, 5), 99) == 5
    assert count_with(5, listed(5, 5), 3) == 5


def test_a_list_longer_than_expected_is_followed():
    assert count_without(3, listed(5, 3), 1) == 4
    assert count_with(3, listed(5, 3), 99) == 6


def test_a_visit_is_for_a_cow_at_least():
    assert count_without(1, listed(1, 1), 1) == 1
