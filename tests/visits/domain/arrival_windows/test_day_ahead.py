from visits.domain.arrival_windows.day_ahead import DayAhead, DayStop, Spread
from visits.domain.visit_lengths.spread_shape import normal_shape


def test_without_history_lengths_spread_as_a_normal_curve_and_drives_as_reckoned():
    assert Spread().lengths == normal_shape()
    assert Spread().drive_ratio == 1


def test_a_day_has_no_meal_and_no_now_unless_they_are_given():
    day = DayAhead(420, (DayStop(20, 120, 20),))
    assert (day.meal, day.now, day.drive_home) == (None, None, 0)
