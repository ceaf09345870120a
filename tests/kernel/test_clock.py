from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

import pytest

from trimops.kernel.clock import at_local, from_to, local_day, monday_of

LONDON = ZoneInfo("Europe/London")


def test_late_evening_in_utc_is_already_the_next_day_in_british_summer():
    assert local_day(datetime(2026, 7, 1, 23, 30, tzinfo=UTC), LONDON) == date(2026, 7, 2)


def test_the_same_evening_in_winter_is_still_that_day():
    assert local_day(datetime(2026, 1, 1, 23, 30, tzinfo=UTC), LONDON) == date(2026, 1, 1)


@pytest.mark.parametrize(
    ("day", "monday"),
    [
        (date(2026, 3, 2), date(2026, 3, 2)),
        (date(2026, 3, 8), date(2026, 3, 2)),
        (date(2027, 1, 1), date(2026, 12, 28)),
    ],
)
def test_a_week_is_named_by_its_monday(day, monday):
    assert monday_of(day) == monday


def test_wall_clock_seven_is_six_in_utc_in_summer_and_seven_in_winter():
    assert at_local(date(2026, 7, 1), time(7), LONDON).astimezone(UTC).hour == 6
    assert at_local(date(2026, 1, 1), time(7), LONDON).astimezone(UTC).hour == 7


def test_an_hour_that_happens_twice_means_its_first_pass():
    """Clocks go back on 25 October 2026 at 02:00 BST."""
    first = at_local(date(2026, 10, 25), time(1, 30, fold=1), LONDON)
    assert first.astimezone(UTC) == datetime(2026, 10, 25, 0, 30, tzinfo=UTC)


def test_an_hour_that_is_skipped_lands_after_the_gap():
    """Clocks go forward on 29 March 2026 at 01:00 GMT."""
    skipped = at_local(date(2026, 3, 29), time(1, 30), LONDON).astimezone(UTC)
    assert skipped.astimezone(LONDON).time() == time(2, 30)


def test_the_day_on_which_clocks_go_forward_has_23_hours():
    start, end = from_to(date(2026, 3, 29), date(2026, 3, 29), LONDON)
    assert (end.astimezone(UTC) - start.astimezone(UTC)).total_seconds() == 23 * 3600
    assert from_to(date(2026, 3, 29), date(2026, 3, 30), LONDON) == (start, end + timedelta(days=1))
