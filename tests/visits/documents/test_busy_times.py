"""A table of entries, as phones and other calendars write them, and when somebody is busy by each."""

import json
from contextlib import suppress
from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.visits.documents.own_calendar import DENTIST, HOLIDAY, calendar
from visits.documents.busy_times import LARGEST, read_busy_times
from visits.documents.calendar_rules import CannotRead

LONDON, NEW_YORK = ZoneInfo("Europe/London"), ZoneInfo("America/New_York")
LORD_HOWE = ZoneInfo("Australia/Lord_Howe")
GIVEN = Path(__file__).parents[3] / "fixtures/ical_in"
FIRST, LAST = date(2026, 3, 2), date(2026, 6, 30)


def busy(content, zone=LONDON, first=FIRST, last=LAST):
    return read_busy_times(content, first, last, zone)


def starts(*entries, head="", zone=LONDON, last=LAST):
    """The beginnings in UTC, short."""
    found = busy(calendar(*entries, head=head), zone, last=last)
    return [f"{each.starts.astimezone(UTC):%m-%d %H:%M}" for each in found.times]


def hours(begin="20260303T090000Z", more=""):
    return f"DTSTART:{begin}\nDURATION:PT1H\n{more}".strip()


def test_an_appointment_and_a_holiday():
    dentist, holiday = busy(calendar(DENTIST, HOLIDAY)).times
    assert (dentist.starts, dentist.ends) == (
        datetime(2026, 3, 3, 9, 30, tzinfo=LONDON),
        datetime(2026, 3, 3, 11, tzinfo=LONDON),
    )
    assert (dentist.is_all_day, dentist.summary) == (False, "Dentist")
    assert (holiday.starts, holiday.ends) == (
        datetime(2026, 3, 10, tzinfo=LONDON),
        datetime(2026, 3, 13, tzinfo=LONDON),
    )
    assert holiday.is_all_day


@pytest.mark.parametrize(
    ("entry", "expected"),
    [
        (hours(), ["03-03 09:00"]),
        ("DTSTART;VALUE=DATE:20260310", ["03-10 00:00"]),
        ("DTSTART;VALUE=DATE:20260610", ["06-09 23:00"]),
        ("DTSTART:20260303T090000\nDTEND:20260303T100000", ["03-03 09:00"]),
        ("DTSTART:20260403T090000\nDTEND:20260403T100000", ["04-03 08:00"]),
        ("DTSTART;TZID=America/New_York:20260303T090000\nDURATION:PT1H", ["03-03 14:00"]),
        ("DTSTART;TZID=W. Europe Standard Time:20260303T090000\nDURATION:PT1H", ["03-03 08:00"]),
        (hours(more="TRANSP:TRANSPARENT"), []),
        (hours(more="TRANSP:OPAQUE"), ["03-03 09:00"]),
        (hours(more="STATUS:CANCELLED"), []),
        (hours(more="STATUS:TENTATIVE"), ["03-03 09:00"]),
        (hours(more="X-MICROSOFT-CDO-BUSYSTATUS:FREE"), []),
        (hours(more="X-MICROSOFT-CDO-BUSYSTATUS:OOF"), ["03-03 09:00"]),
        ("DTSTART:20260303T090000Z", []),
        ("DTSTART:20260303T090000Z\nDTEND:20260303T090000Z", []),
        # An end before the start is taken for a slip: the two the other way round.
        ("DTSTART:20260303T100000Z\nDTEND:20260303T090000Z", ["03-03 09:00"]),
        (hours("20260301T235959Z"), ["03-01 23:59"]),
        (hours("20260301T220000Z"), []),
        (hours("20260630T223000Z"), ["06-30 22:30"]),
        (hours("20260630T230000Z"), []),
        ("DTSTART;VALUE=DATE:20260201\nDTEND;VALUE=DATE:20260401", ["02-01 00:00"]),
        (hours(more="RRULE:FREQ=WEEKLY;COUNT=3"), ["03-03 09:00", "03-10 09:00", "03-17 09:00"]),
        (
            hours(more="RRULE:FREQ=WEEKLY;COUNT=3\nEXDATE:20260310T090000Z"),
            ["03-03 09:00", "03-17 09:00"],
        ),
        (hours(more="RDATE:20260305T090000Z"), ["03-03 09:00", "03-05 09:00"]),
        # By London's clock nine stays nine: an hour earlier in UTC after 29 March.
        (
            "DTSTART;TZID=Europe/London:20260327T090000\nDURATION:PT1H\nRRULE:FREQ=DAILY;COUNT=4",
            ["03-27 09:00", "03-28 09:00", "03-29 08:00", "03-30 08:00"],
        ),
        # A birthday since 1984, and the 29th of February that is not in 2026.
        ("DTSTART;VALUE=DATE:19840501\nRRULE:FREQ=YEARLY", ["04-30 23:00"]),
        ("DTSTART;VALUE=DATE:20240229\nRRULE:FREQ=YEARLY", []),
    ],
)
def test_an_entry_keeps_somebody_busy_then(entry, expected):
    assert starts(entry) == expected


def test_one_time_of_a_series_moved_made_free_or_called_off():
    series = "UID:s\nDTSTART:20260303T090000Z\nDURATION:PT1H\nRRULE:FREQ=WEEKLY;COUNT=4"
    moved = "UID:s\nRECURRENCE-ID:20260310T090000Z\nDTSTART:20260311T140000Z\nDURATION:PT1H"
    free = (
        "UID:s\nRECURRENCE-ID:20260317T090000Z\nDTSTART:20260317T090000Z\nDURATION:PT1H\nTRANSP:TRANSPARENT"
    )
    off = "UID:s\nRECURRENCE-ID:20260324T090000Z\nDTSTART:20260324T090000Z\nDURATION:PT1H\nSTATUS:CANCELLED"
    assert starts(series, moved, free, off) == ["03-03 09:00", "03-11 14:00"]


def test_a_calendar_may_say_one_zone_for_all_its_times():
    head = "X-WR-TIMEZONE:America/New_York"
    weekly = "DTSTART:20260305T140000Z\nDURATION:PT1H\nRRULE:FREQ=WEEKLY;COUNT=2"
    assert starts("DTSTART:20260303T090000\nDURATION:PT1H", head=head) == ["03-03 14:00"]
    # Nine in New York, whose clocks change on 8 March.
    assert starts(weekly, head=head) == ["03-05 14:00", "03-12 13:00"]
    assert starts("DTSTART:20260303T090000\nDURATION:PT1H", head="X-WR-TIMEZONE:Nowhere/Land")


def test_whole_days_are_the_days_of_the_business_wherever_it_is():
    content = calendar("DTSTART;VALUE=DATE:20260405\nDTEND;VALUE=DATE:20260406")
    (day,) = busy(content, LORD_HOWE).times
    assert day.ends - day.starts == timedelta(days=1), "by the wall clock"
    assert day.ends.astimezone(UTC) - day.starts.astimezone(UTC) == timedelta(hours=24, minutes=30)


def test_several_calendars_in_one_file_and_the_same_entry_twice():
    one = calendar(DENTIST)
    assert len(busy(one + calendar(HOLIDAY) + one).times) == 2


@pytest.mark.parametrize(
    "content",
    [
        b"",
        b"<html>Please sign in</html>",
        b"\xff\xfe\x00",
        b"BEGIN:VCARD\r\nEND:VCARD\r\n",
        b"BEGIN:VCALENDAR\r\n",
    ],
)
def test_what_is_no_calendar_is_told_so(content):
    with pytest.raises(CannotRead, match="no calendar"):
        busy(content)


def test_a_calendar_without_entries_keeps_nobody_busy():
    assert busy(calendar()).times == ()
    assert busy(b"\xef\xbb\xbf\r\n" + calendar(DENTIST)).times, "a mark of its bytes before it is no fault"


def test_a_calendar_too_large_is_told_so():
    with pytest.raises(CannotRead, match="larger"):
        busy(calendar(DENTIST) + b" " * LARGEST)


def test_one_bad_entry_is_left_out_and_spoils_no_other():
    found = busy(calendar("SUMMARY:No day at all", "DTSTART:20260303T090000Z\nDURATION:P999999999D", DENTIST))
    assert [each.summary for each in found.times] == ["Dentist"]
    assert found.left_out >= 1


@pytest.mark.parametrize(
    "begin", ["DTSTART:202603", "DTSTART;VALUE=DATE:20260303T0900\nDTSTART:x", "SUMMARY:None"]
)
def test_an_entry_that_repeats_from_a_broken_beginning_spoils_no_other(begin):
    found = busy(calendar(f"{begin}\nRRULE:FREQ=DAILY", DENTIST))
    assert [each.summary for each in found.times] == ["Dentist"]
    assert found.left_out == 1


def test_what_an_entry_is_called_is_one_short_line():
    (found,) = busy(calendar(hours(more="SUMMARY:" + "long\\n " * 60))).times
    assert len(found.summary) <= 80
    assert "\n" not in found.summary


@pytest.mark.parametrize("name", sorted(path.name for path in GIVEN.glob("*.ics")))
def test_sloppy_calendars_are_read_as_far_as_they_make_sense(name):
    found = busy((GIVEN / name).read_bytes(), first=date(2026, 1, 1), last=date(2027, 12, 31))
    assert len(found.times) + found.left_out >= 4


def test_the_occurrences_are_those_that_the_standard_lists():
    """Of RFC 5545, 3.8.5.3; rules by the minute are left out, and said to be."""
    rules = json.loads((GIVEN / "rfc5545_rrule_examples.json").read_text())
    wild = []
    for rule in rules:
        exdates = "".join(f"\nEXDATE;TZID={rule['tzid']}:{day}" for day in rule["exdate"])
        entry = (
            f"DTSTART;TZID={rule['tzid']}:{rule['dtstart']}\nDURATION:PT1M\nRRULE:{rule['rrule']}{exdates}"
        )
        listed = rule.get("corrected_occurrences") or rule["occurrences"]
        last = datetime.strptime(listed[-1], "%Y%m%dT%H%M%S").replace(tzinfo=NEW_YORK).date()
        found = busy(calendar(entry), NEW_YORK, date(1990, 1, 1), last)
        if found.left_out:
            wild.append(rule["rrule"])
            continue
        written = [f"{each.starts.astimezone(NEW_YORK):%Y%m%dT%H%M%S}" for each in found.times]
        assert written[: len(listed)] == listed, rule["title"]
    assert all("HOURLY" in rule or "MINUTELY" in rule for rule in wild), wild
    assert len(rules) - len(wild) >= 38


@given(st.binary(max_size=400))
def test_no_bytes_whatever_do_more_than_be_refused(content):
    for whole in (content, calendar(DENTIST).replace(b"Dentist", content)):
        with suppress(CannotRead):
            busy(whole)
