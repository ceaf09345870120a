"""The zone beside the events: which years it tells, and hours that come twice."""

from zoneinfo import ZoneInfo

import pytest

from tests.visits.documents.feed_lint import faults_of
from tests.visits.documents.zone_edges import utc
from visits.documents.calendar_zone import wall_time, zone_lines

LONDON = ZoneInfo("Europe/London")


def test_a_zone_without_instants_and_utc_need_no_component():
    assert zone_lines("Europe/London", []) == zone_lines("Etc/UTC", [utc(2026, 1, 1)]) == ""


def test_a_zone_with_a_rule_is_told_by_it_whatever_the_year():
    told = {zone_lines("Europe/London", [utc(year, 6, 1)]) for year in (2026, 2027, 2030)}
    assert len(told) == 1
    assert "RRULE:FREQ=YEARLY;BYDAY=-1SU;BYMONTH=3\r\n" in told.pop()


def test_a_zone_without_a_rule_tells_each_change_by_itself_and_never_two_in_a_line():
    lines = zone_lines("Africa/Casablanca", [utc(2026, 2, 1), utc(2027, 4, 1)])
    assert "RRULE" not in lines
    assert lines.count("BEGIN:STANDARD") + lines.count("BEGIN:DAYLIGHT") >= 4
    calendar = f"BEGIN:VCALENDAR\r\nPRODID:x\r\n{lines}END:VCALENDAR\r\n"
    assert faults_of(calendar.encode()) == []


@pytest.mark.parametrize(
    ("at", "line"),
    [
        (utc(2026, 7, 1, 8), "DTSTART;TZID=Europe/London:20260701T090000"),
        (utc(2026, 10, 24, 23, 59), "DTSTART;TZID=Europe/London:20261025T005900"),
        (utc(2026, 10, 25, 0, 30), "DTSTART:20261025T003000Z"),  # 01:30, the first time
        (utc(2026, 10, 25, 1, 30), "DTSTART:20261025T013000Z"),  # 01:30, the second time
        (utc(2026, 10, 25, 2, 0), "DTSTART;TZID=Europe/London:20261025T020000"),
        (utc(2027, 3, 28, 0, 59), "DTSTART;TZID=Europe/London:20270328T005900"),
        (utc(2027, 3, 28, 1, 0), "DTSTART;TZID=Europe/London:20270328T020000"),
        (utc(2028, 2, 29, 12), "DTSTART;TZID=Europe/London:20280229T120000"),
        (utc(2027, 1, 3, 23), "DTSTART;TZID=Europe/London:20270103T230000"),  # Sunday of week 53 of 2026
    ],
)
def test_an_hour_that_comes_twice_is_told_in_utc_and_every_other_by_the_clock(at, line):
    assert wall_time("DTSTART", at, LONDON) == f"{line}\r\n"


@pytest.mark.parametrize(
    ("zone", "at", "line"),
    [
        (
            "Australia/Lord_Howe",
            utc(2027, 4, 3, 14, 45),
            "X:20270403T144500Z",
        ),  # 01:45, twice within half an hour
        ("Australia/Lord_Howe", utc(2027, 4, 3, 15, 45), "X;TZID=Australia/Lord_Howe:20270404T021500"),
        ("America/New_York", utc(2027, 3, 14, 7), "X;TZID=America/New_York:20270314T030000"),
        ("Asia/Kathmandu", utc(2028, 2, 28, 18, 15), "X;TZID=Asia/Kathmandu:20280229T000000"),
    ],
)
def test_the_same_on_other_continents(zone, at, line):
    assert wall_time("X", at, ZoneInfo(zone)) == f"{line}\r\n"


def test_an_instant_without_a_zone_is_refused():
    with pytest.raises(ValueError, match="zone"):
        wall_time("X", utc(2026, 1, 1).replace(tzinfo=None), LONDON)
