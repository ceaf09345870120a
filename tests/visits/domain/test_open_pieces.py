from datetime import UTC, datetime, timedelta

from hypothesis import given
from hypothesis import strategies as st

from visits.domain.open_pieces import best_piece, open_pieces

DAY = datetime(2026, 3, 3, tzinfo=UTC)


def at(hour):
    return DAY + timedelta(hours=hour)


def pieces(*taken, start=7, end=17):
    found = open_pieces(at(start), at(end), [(at(a), at(b)) for a, b in taken])
    return [((a - DAY).total_seconds() / 3600, (b - DAY).total_seconds() / 3600) for a, b in found]


def test_what_is_left_of_a_day():
    assert pieces() == [(7, 17)]
    assert pieces((9, 10)) == [(7, 9), (10, 17)]
    assert pieces((0, 24)) == []
    assert pieces((7, 17)) == []
    assert pieces((5, 8), (16, 20)) == [(8, 16)]
    assert pieces((3, 7), (17, 18)) == [(7, 17)]
    assert pieces((12, 13), (9, 10), (9.5, 12)) == [(7, 9), (13, 17)]
    assert pieces((8, 15), (9, 10)) == [(7, 8), (15, 17)]


hours = st.integers(0, 24)


@given(st.lists(st.tuples(hours, hours).map(sorted), max_size=6))
def test_an_hour_is_left_if_and_only_if_nothing_takes_it(taken):
    left = pieces(*taken)
    for hour in range(7, 17):
        free = all(not (a <= hour and hour + 1 <= b) for a, b in taken)
        assert any(a <= hour and hour + 1 <= b for a, b in left) == free
    assert all(a < b for a, b in left)


def test_the_longest_piece_is_the_best_and_the_first_of_two():
    assert best_piece([(at(7), at(9)), (at(10), at(17))], []) == (at(10), at(17))
    assert best_piece([(at(7), at(9)), (at(10), at(12))], []) == (at(7), at(9))
    assert best_piece([], []) is None


def test_a_promise_counts_more_than_length():
    both = [(at(7), at(9)), (at(10), at(17))]
    assert best_piece(both, [(at(7.5), at(8.5))]) == both[0]
    assert best_piece(both, [(at(7.5), at(8.5)), (at(11), at(12))]) == both[1]
    assert best_piece(both, [(at(8.5), at(9.5))]) == both[1]
