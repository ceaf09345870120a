from datetime import UTC, date, datetime, timedelta

import pytest

from trimops.paper.days import clock, day_long, day_plain, day_short, day_short_year, length

DAY = date(2026, 12, 1)


def test_days_are_written_out_whatever_the_machine_speaks():
    assert day_long(DAY) == "Tuesday 1 December 2026"
    assert day_plain(DAY) == "1 December 2026"
    assert day_short(DAY) == "Tue 1 Dec"
    assert day_short_year(DAY) == "1 Dec 2026"


def test_the_clock_is_that_of_the_instants_own_zone():
    assert clock(datetime(2026, 12, 1, 9, 5, tzinfo=UTC)) == "09:05"


@pytest.mark.parametrize(
    ("minutes", "words"), [(0, "0 min"), (45, "45 min"), (60, "1 h"), (145, "2 h 25 min"), (59.6, "1 h")]
)
def test_lengths_are_told_in_hours_and_minutes(minutes, words):
    assert length(timedelta(minutes=minutes)) == words
