from fractions import Fraction

from tests.visits.domain.planning.audit.one_run import a_run, a_week, clock, job, shift
from visits.domain.planning.audit.room import rooms_for
from visits.domain.planning.audit.week import Window


def test_room_is_found_before_between_and_after():
    week = a_week(job("a"), job("b"), job("c", "high"), on=shift(cost_per_hour=Fraction(60)))
    rooms = rooms_for(week, [a_run(week, ("a", 9), ("b", 12), leave=8, back=14)], week.jobs["c"])
    assert {(room.start, room.added) for room in rooms} >= {(clock(13.5), 60)}
    assert all(room.start >= clock(13.5) for room in rooms), "hygiene keeps it last"


def test_no_room_where_window_or_drive_forbids():
    short = (Window(clock(9.5), clock(11)),)
    week = a_week(job("a"), job("c", windows=short))
    assert rooms_for(week, [a_run(week, ("a", 9), leave=8)], week.jobs["c"])  # same place: 10:00 to 11:00
    far = a_week(job("a", "high"), job("c", windows=short))
    assert rooms_for(far, [a_run(far, ("a", 9), leave=8)], far.jobs["c"]) == []


def test_an_unused_shift_is_room_at_its_full_cost():
    week = a_week(job("c"), on=shift(cost_fixed=Fraction(100), cost_per_km=Fraction(1)))
    assert {room.added for room in rooms_for(week, [], week.jobs["c"])} == {140}
