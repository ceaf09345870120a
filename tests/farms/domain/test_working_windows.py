from datetime import UTC, date, datetime, time, timedelta
from itertools import pairwise
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from farms.domain.working_windows import MilkingTime, Neighbours, WorkingDay, milking_minutes, working_windows

LONDON = ZoneInfo("Europe/London")
HOURS = WorkingDay()
MONDAY = date(2026, 3, 2)
TWICE = [MilkingTime(time(6, 30), 180), MilkingTime(time(16, 30), 180)]


def _clock(windows, zone=LONDON):
    return [tuple(f"{at.astimezone(zone):%H:%M}" for at in window) for window in windows]


def test_a_farm_milked_at_half_past_six_and_half_past_four_can_be_worked_from_half_nine_to_half_three():
    """The worked example of trade-facts 11."""
    assert _clock(working_windows(MONDAY, TWICE, LONDON, HOURS)) == [("09:30", "15:30")]


def test_a_farm_with_robots_is_free_all_the_working_hours():
    assert _clock(working_windows(MONDAY, [], LONDON, HOURS)) == [("07:00", "18:00")]


@pytest.mark.parametrize(
    ("milkings", "hours", "windows"),
    [
        (
            [MilkingTime(time(5), 90), MilkingTime(time(13), 90), MilkingTime(time(21), 90)],
            HOURS,
            ["07:00-12:00", "14:30-18:00"],
        ),
        (TWICE, WorkingDay(rest_after=30), ["10:00-15:30"]),
        (TWICE, WorkingDay(rest_before=0), ["09:30-16:30"]),
        ([MilkingTime(time(7), 660)], HOURS, []),
        ([MilkingTime(time(7, 20), 60)], WorkingDay(rest_before=0), ["08:20-18:00"]),
        ([MilkingTime(time(7, 30), 60)], WorkingDay(rest_before=0), ["07:00-07:30", "08:30-18:00"]),
        ([MilkingTime(time(9), 120), MilkingTime(time(10), 120)], HOURS, ["07:00-08:00", "12:00-18:00"]),
    ],
)
def test_windows_are_the_gaps_between_milkings(milkings, hours, windows):
    found = working_windows(MONDAY, milkings, LONDON, hours)
    assert ["-".join(pair) for pair in _clock(found)] == windows


def test_a_milking_that_runs_over_midnight_takes_from_the_next_morning():
    beside = Neighbours(before=[MilkingTime(time(23), 600)])
    assert _clock(working_windows(MONDAY, [], LONDON, HOURS, beside)) == [("09:00", "18:00")]


def test_the_rest_before_a_milking_soon_after_midnight_takes_from_the_evening_before():
    hours = WorkingDay(latest=time(23, 59), rest_before=120)
    beside = Neighbours(after=[MilkingTime(time(0, 30), 60)])
    assert _clock(working_windows(MONDAY, [], LONDON, hours, beside)) == [("07:00", "22:30")]


def test_the_wall_clock_stays_the_same_when_summer_time_begins():
    """29 March 2026: the same farm, an hour earlier in UTC than the Sunday before."""
    before, after = date(2026, 3, 22), date(2026, 3, 29)
    assert working_windows(before, TWICE, LONDON, HOURS)[0][0] == datetime(2026, 3, 22, 9, 30, tzinfo=UTC)
    assert working_windows(after, TWICE, LONDON, HOURS)[0][0] == datetime(2026, 3, 29, 8, 30, tzinfo=UTC)


def test_a_milking_lasts_its_true_minutes_through_the_change_of_clocks():
    """A two-hour milking from 00:30 on 29 March 2026 ends at 03:30 by the wall clock."""
    hours = WorkingDay(earliest=time(0), rest_before=0)
    windows = working_windows(date(2026, 3, 29), [MilkingTime(time(0, 30), 120)], LONDON, hours)
    assert _clock(windows)[-1] == ("03:30", "18:00")


def test_hours_that_end_before_they_start_are_refused():
    with pytest.raises(ValueError, match="ends before it starts"):
        WorkingDay(earliest=time(18), latest=time(7))


def test_a_median_herd_takes_about_three_hours_to_milk():
    """193 cows at 62 an hour (trade-facts 11: 2.6 to 3.1 h)."""
    assert 2.6 * 60 <= milking_minutes(193) <= 3.15 * 60


milkings = st.builds(MilkingTime, st.times(), st.integers(5, 720))


@given(st.dates(date(2026, 1, 1), date(2027, 12, 31)), st.lists(milkings, max_size=4))
def test_windows_are_ordered_apart_long_enough_and_free_of_milking(day, day_milkings):
    windows = working_windows(day, day_milkings, LONDON, HOURS)
    assert all(end - start >= timedelta(minutes=HOURS.shortest) for start, end in windows)
    assert all(a[1] <= b[0] for a, b in pairwise(windows))
    for milking in day_milkings:
        start = datetime.combine(day, milking.start, tzinfo=LONDON)
        assert not any(window[0] <= start < window[1] for window in windows)
