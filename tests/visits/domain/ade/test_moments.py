"""RFC 3339 in UTC with a Z, and no day that slips."""

from datetime import UTC, date, datetime, timedelta, timezone
from zoneinfo import ZoneInfo

import pytest

from visits.domain.ade.moments import day_text, instant_text


def test_an_instant_of_the_summer_is_told_in_utc():
    at = datetime(2026, 7, 1, 0, 30, tzinfo=ZoneInfo("Europe/London"))
    assert instant_text(at) == "2026-06-30T23:30:00Z"


def test_parts_of_a_second_are_left_out():
    assert instant_text(datetime(2026, 3, 2, 1, 2, 3, 987654, tzinfo=UTC)) == "2026-03-02T01:02:03Z"


def test_an_instant_without_a_zone_is_refused():
    with pytest.raises(ValueError, match="zone"):
        instant_text(datetime(2026, 3, 2))  # noqa: DTZ001


@pytest.mark.parametrize("hours", [-12, -5, 0, 1, 11])
def test_a_day_is_the_same_day_for_a_reader_far_away(hours):
    told = datetime.fromisoformat(day_text(date(2026, 7, 1)))
    assert told.astimezone(timezone(timedelta(hours=hours))).date() == date(2026, 7, 1)
