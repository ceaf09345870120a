"""Clock changes: Europe/London goes to summer time on 28 March 2027 at 01:00 UTC (last Sunday of March)."""

from datetime import UTC, date, datetime
from zoneinfo import ZoneInfo

import pytest
from django.utils import timezone

from trimops.web.templatetags.moments import clock, day, day_long, day_year, moment, till, weekday

LONDON = ZoneInfo("Europe/London")
AUCKLAND = ZoneInfo("Pacific/Auckland")


@pytest.fixture(autouse=True)
def in_london():
    with timezone.override(LONDON):
        yield


def test_a_day_is_short_without_its_year():
    assert day(date(2027, 3, 2)) == "Tue 2 Mar"
    assert day_year(date(2027, 3, 2)) == "Tue 2 Mar 2027"
    assert day_long(date(2027, 3, 2)) == "Tuesday 2 March"
    assert weekday(date(2027, 3, 2)) == "Tuesday"


def test_an_instant_is_shown_in_the_active_zone_on_both_sides_of_the_clock_change():
    assert moment(datetime(2027, 3, 27, 9, 30, tzinfo=UTC)) == "Sat 27 Mar, 09:30"
    assert moment(datetime(2027, 3, 28, 9, 30, tzinfo=UTC)) == "Sun 28 Mar, 10:30"


def test_the_day_of_an_instant_is_the_day_in_the_zone():
    late = datetime(2027, 6, 1, 23, 30, tzinfo=UTC)
    assert day(late) == "Wed 2 Jun"
    assert day_year(datetime(2026, 12, 31, 12, 30, tzinfo=UTC), AUCKLAND) == "Fri 1 Jan 2027"


def test_a_zone_can_be_named():
    assert clock(datetime(2027, 6, 1, 9, 0, tzinfo=UTC), AUCKLAND) == "21:00"


def test_a_span_names_the_second_day_only_when_it_differs():
    start = datetime(2027, 3, 2, 9, 30, tzinfo=UTC)
    assert till(start, datetime(2027, 3, 2, 11, 45, tzinfo=UTC)) == "09:30 to 11:45"
    assert till(start, datetime(2027, 3, 3, 11, 45, tzinfo=UTC)) == "09:30 to Wed 3 Mar, 11:45"


def test_nothing_known_is_a_dash():
    assert [show(None) for show in (day, day_year, day_long, weekday, clock, moment)] == ["–"] * 6
