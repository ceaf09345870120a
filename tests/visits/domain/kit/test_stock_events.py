"""Lines that speak of one thing are one event."""

from datetime import UTC, datetime, timedelta
from decimal import Decimal

from visits.domain.kit.stock_events import stock_events
from visits.domain.kit.stock_kinds import MovementKind
from visits.domain.kit.stock_lines import Movement

TEN = datetime(2026, 3, 3, 10, tzinfo=UTC)
STORE, VAN = 1, 2


def line(number, kind, quantity, place=VAN, minutes=0, **words):
    return Movement(number, TEN + timedelta(minutes=minutes), place, kind, Decimal(quantity), **words)


def told(*lines):
    return [(event.id, event.kind, event.place, event.change) for event in stock_events(lines)]


def test_a_use_and_its_correction_are_their_sum_where_the_first_stood():
    used = [line(n, MovementKind.USED, q, source="trim 5") for n, q in ((1, -80), (4, 40))]
    other = line(2, MovementKind.USED, -40, source="trim 6")
    assert told(used[1], other, used[0]) == [
        (1, MovementKind.USED, VAN, -4000),
        (2, MovementKind.USED, VAN, -4000),
    ]


def test_what_was_taken_back_whole_is_nothing():
    assert told(*(line(n, MovementKind.USED, q, source="trim 5") for n, q in ((1, -80), (2, 80)))) == []


def test_uses_of_one_source_at_two_moments_are_two():
    lines = [line(n, MovementKind.USED, -200, minutes=n, source="visit 3 wash") for n in (1, 2)]
    assert [event.change for event in stock_events(lines)] == [-20000, -20000]


def test_what_a_count_found_at_first_and_after_late_news_is_one_and_comes_last_in_its_moment():
    found = line(3, MovementKind.COUNTED, -5)
    late = line(7, MovementKind.USED, -5, source="trim 9")
    again = line(8, MovementKind.COUNTED, 3)
    assert told(found, late, again) == [
        (7, MovementKind.USED, VAN, -500),
        (3, MovementKind.COUNTED, VAN, -200),
    ]


def test_two_legs_are_one_move_whichever_was_written_first():
    out = line(4, MovementKind.MOVED, -3, place=STORE, source="a")
    into = line(3, MovementKind.MOVED, 3, source="a")
    (event,) = stock_events([out, into])
    assert (event.place, event.target, event.change, event.id) == (STORE, VAN, -300, 3)


def test_two_lots_moved_at_once_are_two_moves():
    lines = [
        line(2 * lot + n, MovementKind.MOVED, quantity, place, lot=lot, source="a")
        for lot in (1, 2)
        for n, (place, quantity) in enumerate([(STORE, -3), (VAN, 3)])
    ]
    assert [(event.lot, event.target) for event in stock_events(lines)] == [(1, VAN), (2, VAN)]


def test_a_leg_without_its_other_is_as_if_a_count_had_missed_it():
    assert told(line(1, MovementKind.MOVED, -3, source="a")) == [(1, MovementKind.COUNTED, VAN, -300)]


def test_lines_without_a_source_stand_for_themselves():
    lines = [line(n, MovementKind.WRITTEN_OFF, -1) for n in (1, 2)]
    assert len(stock_events(lines)) == 2
