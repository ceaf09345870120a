"""Farms are left in peace by the wall clock, whatever the clocks do that night."""

from datetime import UTC, datetime, time, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from visits.domain.messages.quiet_hours import QuietHours, goes_at

LONDON = ZoneInfo("Europe/London")
LORD_HOWE = ZoneInfo("Australia/Lord_Howe")
NEW_YEAR = datetime(2026, 1, 1, tzinfo=UTC)
NIGHT = QuietHours(time(20), time(7), LONDON)
NOON_NAP = QuietHours(time(12), time(13, 30), LONDON)


def london(text, fold=0):
    return datetime.fromisoformat(text).replace(tzinfo=LONDON, fold=fold)


@pytest.mark.parametrize(
    ("at", "over"),
    [
        ("2026-03-02 19:59", "2026-03-02 19:59"),
        ("2026-03-02 20:00", "2026-03-03 07:00"),
        ("2026-03-02 23:59", "2026-03-03 07:00"),
        ("2026-03-03 00:00", "2026-03-03 07:00"),
        ("2026-03-03 06:59", "2026-03-03 07:00"),
        ("2026-03-03 07:00", "2026-03-03 07:00"),
        ("2026-03-28 22:00", "2026-03-29 07:00"),  # the clock goes forward
        ("2026-03-29 03:00", "2026-03-29 07:00"),
        ("2026-10-24 22:00", "2026-10-25 07:00"),  # the clock goes back
        ("2026-10-25 01:30", "2026-10-25 07:00"),
        ("2028-02-28 21:00", "2028-02-29 07:00"),  # leap day
        ("2026-12-31 21:00", "2027-01-01 07:00"),
    ],
)
def test_a_night_over_midnight(at, over):
    assert NIGHT.over_at(london(at)) == london(over)


@pytest.mark.parametrize(
    ("at", "over"),
    [("11:59", "11:59"), ("12:00", "13:30"), ("13:29", "13:30"), ("13:30", "13:30"), ("00:00", "00:00")],
)
def test_quiet_within_a_day(at, over):
    assert NOON_NAP.over_at(london(f"2026-06-01 {at}")) == london(f"2026-06-01 {over}")


def test_the_same_time_twice_is_never_quiet():
    never = QuietHours(time(7), time(7), LONDON)
    assert all(never.over_at(at) == at for at in (london("2026-03-02 07:00"), london("2026-03-02 03:00")))


def test_the_hour_that_comes_twice_ends_the_quiet_at_its_first_pass():
    quiet = QuietHours(time(20), time(1, 30), LONDON)
    first, second = london("2026-10-25 01:10"), london("2026-10-25 01:10", fold=1)
    assert quiet.over_at(first) == london("2026-10-25 01:30")
    assert quiet.over_at(second) == second


def test_an_hour_that_is_skipped_ends_the_quiet_after_the_jump():
    quiet = QuietHours(time(20), time(1, 30), LONDON)
    over = quiet.over_at(london("2026-03-29 00:50"))
    assert over.astimezone(UTC) == datetime(2026, 3, 29, 1, 30, tzinfo=UTC)
    assert quiet.over_at(over) == over


@pytest.mark.parametrize(
    "zone", ["Europe/London", "America/New_York", "Australia/Lord_Howe", "Africa/Casablanca"]
)
@given(
    at=st.integers(0, 365 * 24 * 60).map(lambda minutes: NEW_YEAR + timedelta(minutes=minutes)),
    begins=st.times(),
    ends=st.times(),
)
def test_the_quiet_is_over_where_it_says_and_no_night_is_longer_than_a_day(zone, at, begins, ends):
    quiet = QuietHours(begins, ends, ZoneInfo(zone))
    over = quiet.over_at(at)
    assert over == at or over.astimezone(ZoneInfo(zone)) == over
    assert timedelta(0) <= over.astimezone(UTC) - at <= timedelta(hours=25, minutes=1)


@pytest.mark.parametrize(
    ("at", "about", "goes"),
    [
        ("2026-03-02 12:00", "2026-03-03 10:00", "2026-03-02 12:00"),
        ("2026-03-02 21:00", "2026-03-03 10:00", "2026-03-03 07:00"),
        ("2026-03-02 21:00", "2026-03-03 08:00", "2026-03-03 07:00"),
        ("2026-03-02 21:00", "2026-03-03 07:59", "2026-03-02 21:00"),
        ("2026-03-02 21:00", "2026-03-03 06:30", "2026-03-02 21:00"),
        ("2026-03-03 06:50", "2026-03-03 07:40", "2026-03-03 06:50"),
        ("2026-10-24 22:00", "2026-10-25 07:30", "2026-10-24 22:00"),
        ("2026-10-24 22:00", "2026-10-25 08:00", "2026-10-25 07:00"),
    ],
)
def test_quiet_is_waited_for_only_where_the_message_still_comes_an_hour_before(at, about, goes):
    assert goes_at(london(at), london(about), NIGHT) == london(goes)


def test_half_an_hour_of_clock_change_on_lord_howe():
    quiet = QuietHours(time(20), time(7), LORD_HOWE)
    evening = datetime(2026, 4, 4, 21, tzinfo=LORD_HOWE)
    over = quiet.over_at(evening)
    assert (over.astimezone(UTC) - evening.astimezone(UTC)) == timedelta(hours=10, minutes=30)
