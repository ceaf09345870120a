"""Which day is due, in many zones, through changed clocks and left-out days.

The instants of clock changes are from memory of the IANA time zone database (no source fetched); each test first says
what the wall shows, so a wrong memory fails there.
"""

from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trimops.errands.domain.due_day import due_day
from trimops.kernel.clock import at_local

LONDON, NEW_YORK, LORD_HOWE = "Europe/London", "America/New_York", "Australia/Lord_Howe"
CASABLANCA, APIA, KATHMANDU = "Africa/Casablanca", "Pacific/Apia", "Asia/Kathmandu"
AUCKLAND, HONOLULU, KIRITIMATI = "Pacific/Auckland", "Pacific/Honolulu", "Pacific/Kiritimati"

# zone, the daily hour, the instant (UTC), the wall there, the day that is due
CASES = [
    # London goes forward at 01:00 GMT on 29 March 2026: 01:30 never shows, 02:30 follows 00:30.
    (LONDON, "01:30", "2026-03-29T00:59", "29 00:59", "2026-03-28"),
    (LONDON, "01:30", "2026-03-29T01:00", "29 02:00", "2026-03-28"),
    (LONDON, "01:30", "2026-03-29T01:29", "29 02:29", "2026-03-28"),
    (LONDON, "01:30", "2026-03-29T01:30", "29 02:30", "2026-03-29"),
    (LONDON, "02:00", "2026-03-29T01:00", "29 02:00", "2026-03-29"),
    # London goes back at 02:00 BST on 25 October 2026: 01:30 shows twice.
    (LONDON, "01:30", "2026-10-25T00:29", "25 01:29", "2026-10-24"),
    (LONDON, "01:30", "2026-10-25T00:30", "25 01:30", "2026-10-25"),
    (LONDON, "01:30", "2026-10-25T00:59", "25 01:59", "2026-10-25"),
    (LONDON, "01:30", "2026-10-25T01:05", "25 01:05", "2026-10-25"),
    (LONDON, "01:30", "2026-10-25T01:30", "25 01:30", "2026-10-25"),
    # New York goes forward at 02:00 EST on 8 March 2026 and back at 02:00 EDT on 1 November 2026.
    (NEW_YORK, "02:10", "2026-03-08T06:59", "08 01:59", "2026-03-07"),
    (NEW_YORK, "02:10", "2026-03-08T07:00", "08 03:00", "2026-03-07"),
    (NEW_YORK, "02:10", "2026-03-08T07:10", "08 03:10", "2026-03-08"),
    (NEW_YORK, "01:10", "2026-11-01T05:10", "01 01:10", "2026-11-01"),
    (NEW_YORK, "01:10", "2026-11-01T06:05", "01 01:05", "2026-11-01"),
    (NEW_YORK, "18:30", "2026-11-01T23:29", "01 18:29", "2026-10-31"),
    (NEW_YORK, "18:30", "2026-11-01T23:30", "01 18:30", "2026-11-01"),
    # Lord Howe's clocks move by half an hour: back at 02:00 on 5 April 2026, forward at 02:00 on 4 October 2026.
    (LORD_HOWE, "01:45", "2026-04-04T14:45", "05 01:45", "2026-04-05"),
    (LORD_HOWE, "01:45", "2026-04-04T15:00", "05 01:30", "2026-04-05"),
    (LORD_HOWE, "02:10", "2026-10-03T15:29", "04 01:59", "2026-10-03"),
    (LORD_HOWE, "02:10", "2026-10-03T15:39", "04 02:39", "2026-10-03"),
    (LORD_HOWE, "02:10", "2026-10-03T15:40", "04 02:40", "2026-10-04"),
    # Casablanca's clocks go back for Ramadan and forward after it: 15 February and 22 March 2026.
    (CASABLANCA, "02:30", "2026-02-15T01:30", "15 02:30", "2026-02-15"),
    (CASABLANCA, "02:30", "2026-02-15T02:10", "15 02:10", "2026-02-15"),
    (CASABLANCA, "02:30", "2026-03-22T02:00", "22 03:00", "2026-03-21"),
    (CASABLANCA, "02:30", "2026-03-22T02:30", "22 03:30", "2026-03-22"),
    # Apia went from the end of 29 December 2011 straight to 31 December.
    (APIA, "02:00", "2011-12-30T09:59", "29 23:59", "2011-12-29"),
    (APIA, "02:00", "2011-12-30T10:00", "31 00:00", "2011-12-29"),
    (APIA, "02:00", "2011-12-30T11:59", "31 01:59", "2011-12-29"),
    (APIA, "02:00", "2011-12-30T12:00", "31 02:00", "2011-12-31"),
    # A leap day, the turn of a year, week 53 of 2026 and the Monday after it.
    (LONDON, "02:00", "2028-02-29T01:59", "29 01:59", "2028-02-28"),
    (LONDON, "02:00", "2028-02-29T02:00", "29 02:00", "2028-02-29"),
    (LONDON, "02:00", "2028-03-01T01:59", "01 01:59", "2028-02-29"),
    (LONDON, "02:00", "2027-01-01T01:00", "01 01:00", "2026-12-31"),
    (LONDON, "18:30", "2027-01-03T18:30", "03 18:30", "2027-01-03"),
    (LONDON, "18:30", "2027-01-04T18:29", "04 18:29", "2027-01-03"),
    # Other continents, at one and the same instant.
    (KATHMANDU, "06:00", "2026-06-30T23:59", "01 05:44", "2026-06-30"),
    (KATHMANDU, "06:00", "2026-07-01T00:15", "01 06:00", "2026-07-01"),
    (AUCKLAND, "06:00", "2026-07-01T00:15", "01 12:15", "2026-07-01"),
    (HONOLULU, "06:00", "2026-07-01T00:15", "30 14:15", "2026-06-30"),
    (KIRITIMATI, "18:30", "2026-07-01T00:15", "01 14:15", "2026-06-30"),
    # Midnight itself.
    (LONDON, "00:00", "2026-06-30T23:00", "01 00:00", "2026-07-01"),
]


@pytest.mark.parametrize(("zone", "clock", "instant", "wall", "day"), CASES)
def test_the_day_that_is_due(zone, clock, instant, wall, day):
    now = datetime.fromisoformat(instant).replace(tzinfo=UTC)
    assert now.astimezone(ZoneInfo(zone)).strftime("%d %H:%M") == wall
    assert due_day(now, time.fromisoformat(clock), ZoneInfo(zone)) == date.fromisoformat(day)


@pytest.mark.parametrize(("zone", "clock", "instant", "wall", "day"), CASES)
def test_an_instant_told_in_the_zone_itself_is_the_same_instant(zone, clock, instant, wall, day):
    now = datetime.fromisoformat(instant).replace(tzinfo=UTC).astimezone(ZoneInfo(zone))
    assert due_day(now, time.fromisoformat(clock), ZoneInfo(zone)) == date.fromisoformat(day)


@pytest.mark.parametrize("zone", [LONDON, NEW_YORK, LORD_HOWE, CASABLANCA])
@pytest.mark.parametrize("clock", [time(1, 30), time(2), time(2, 10), time(18, 30)])
def test_over_a_year_of_quarter_hours_each_day_is_due_once_and_none_is_left_out(zone, clock):
    now, known = datetime(2026, 1, 1, 12, tzinfo=UTC), []
    while now.year == 2026:
        day = due_day(now, clock, ZoneInfo(zone))
        if not known or day != known[-1]:
            known.append(day)
        now += timedelta(minutes=15)
    assert known == [known[0] + timedelta(days=n) for n in range(len(known))]
    assert len(known) in (365, 366)


MINUTES = st.integers(0, 20_000_000).map(lambda minutes: timedelta(minutes=minutes))
INSTANTS = MINUTES.map(lambda after: datetime(2000, 1, 1, tzinfo=UTC) + after)
ZONES = st.sampled_from([LONDON, NEW_YORK, LORD_HOWE, CASABLANCA, APIA, KATHMANDU, AUCKLAND, HONOLULU])


@given(INSTANTS, ZONES, st.times(), st.integers(0, 200_000))
def test_what_is_due_has_come_and_never_goes_back(now, zone, clock, seconds):
    place = ZoneInfo(zone)
    day = due_day(now, clock, place)
    assert at_local(day, clock, place).astimezone(UTC) <= now
    assert due_day(now + timedelta(seconds=seconds), clock, place) >= day
