"""The feed read back by parsers that are not ours (recurring-ical-events, vobject, ical.js), and by our lint."""

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

import icalendar
import pytest
import recurring_ical_events
import vobject

from tests.services.ical_js import has_node, read_by_ical_js
from tests.visits.documents.feed_lint import faults_of
from tests.visits.documents.zone_edges import AROUND, utc
from visits.documents.calendar_feed import calendar_feed, feed_changed_at
from visits.documents.calendar_feed_content import CalendarFeed, CalendarVisit

GOLDEN = Path(__file__).parents[3] / "fixtures" / "documents" / "calendar" / "week.ics"
CHANGED = datetime(2026, 11, 20, 9, tzinfo=UTC)


def visit(number: int, start: datetime, minutes: int = 185, **changes: object) -> CalendarVisit:
    made = CalendarVisit(
        uid=f"visit-{number}@feeds.example.org",
        sequence=number,
        last_modified=CHANGED,
        start=start,
        end=start + timedelta(minutes=minutes),
        summary="High Thornbeck: 28 cows; pen 2, Ŵyl",
        location="Thornbeck, SK0 0AB",
        lat=54.3012344,
        lon=-2.4,
        description="Gate code with the trimmer\nWater: yes, power: 13 A; light \\ shelter",
        url="https://example.org/visits/1/",
    )
    return replace(made, **changes)  # type: ignore[arg-type]


def feed(*visits: CalendarVisit, zone: str = "Europe/London") -> CalendarFeed:
    return CalendarFeed("3f0e6a1c-calendar@feeds.example.org", "Visits – Ann", zone, visits, "Planned visits")


def without_known_name(raw: bytes, zone: str) -> bytes:
    """The zone under a name that no reader knows, so that it has to go by the VTIMEZONE we wrote.

    A name for each zone: both readers keep a zone by its name.
    """
    return raw.replace(zone.encode(), b"Own-" + zone.replace("/", "-").encode())


def starts_by_ical_js(raw: bytes) -> list[datetime]:
    return sorted(start.replace(tzinfo=UTC) for _, start, _ in read_by_ical_js(raw))


def starts_by_icalendar(raw: bytes) -> list[datetime]:
    events = recurring_ical_events.of(icalendar.Calendar.from_ical(raw)).between((2026, 1, 1), (2029, 1, 1))
    return sorted(event["DTSTART"].dt.astimezone(UTC) for event in events)


def starts_by_vobject(raw: bytes) -> list[datetime]:
    return sorted(event.dtstart.value.astimezone(UTC) for event in vobject.readOne(raw.decode()).vevent_list)


@pytest.mark.parametrize(
    "read",
    [
        starts_by_icalendar,
        starts_by_vobject,
        pytest.param(
            starts_by_ical_js, marks=pytest.mark.skipif(not has_node(), reason="no node on this machine")
        ),
    ],
)
@pytest.mark.parametrize("zone", AROUND)
def test_others_read_the_very_instants_over_both_changes_of_the_clock(zone, read):
    starts = AROUND[zone]
    raw = calendar_feed(feed(*[visit(i, start, 20) for i, start in enumerate(starts)], zone=zone))
    assert read(raw) == sorted(starts)
    assert read(without_known_name(raw, zone)) == sorted(starts)


@pytest.mark.parametrize("zone", AROUND)
def test_the_bytes_pass_the_lint_and_a_validator(zone):
    raw = calendar_feed(feed(*[visit(i, start) for i, start in enumerate(AROUND[zone])], zone=zone))
    assert faults_of(raw) == []
    assert vobject.readOne(raw.decode()).validate(raiseException=True)


def test_the_feed_is_the_one_that_was_looked_at():
    week = feed(
        visit(1, utc(2026, 12, 1, 8, 30)),
        visit(2, utc(2026, 12, 2, 9), status="TENTATIVE", lat=None, lon=None, url="", description=""),
        visit(3, utc(2026, 12, 3, 9), status="CANCELLED"),
        visit(
            4, utc(2026, 12, 4), 24 * 60, summary="Day off", all_day=True, location="", description="", url=""
        ),
    )
    assert calendar_feed(week) == GOLDEN.read_bytes()


def test_the_same_plan_gives_the_same_bytes_in_whatever_order_it_came():
    visits = [visit(i, utc(2026, 12, 1 + i, 9)) for i in range(5)]
    assert calendar_feed(feed(*visits)) == calendar_feed(feed(*reversed(visits)))


def test_editing_one_visit_changes_only_its_own_event():
    before = [visit(i, utc(2026, 12, 1 + i, 9)) for i in range(3)]
    moved = replace(
        before[1], sequence=9, start=before[1].start + timedelta(hours=1), last_modified=utc(2026, 11, 21)
    )
    old, new = (calendar_feed(feed(*visits)).decode() for visits in (before, [before[0], moved, before[2]]))
    changed = set(new.split("\r\n")) - set(old.split("\r\n"))
    assert changed == {
        "DTSTART;TZID=Europe/London:20261202T100000",
        "DTSTAMP:20261121T000000Z",
        "LAST-MODIFIED:20261121T000000Z",
        "SEQUENCE:9",
    }


def test_what_was_written_comes_back_letter_by_letter():
    event = icalendar.Calendar.from_ical(calendar_feed(feed(visit(7, utc(2026, 12, 1, 9))))).walk("VEVENT")[0]
    made = visit(7, utc(2026, 12, 1, 9))
    assert (event["SUMMARY"], event["LOCATION"], event["DESCRIPTION"]) == (
        made.summary,
        made.location,
        made.description,
    )
    assert (event["UID"], event["SEQUENCE"], event["URL"], event["STATUS"]) == (
        made.uid,
        7,
        made.url,
        "CONFIRMED",
    )
    assert event["DTSTAMP"].dt == event["LAST-MODIFIED"].dt == CHANGED
    assert event["GEO"].to_ical() == "54.301234;-2.4"


def test_a_visit_called_off_stays_and_no_longer_blocks_the_day():
    event = icalendar.Calendar.from_ical(
        calendar_feed(feed(visit(1, utc(2026, 12, 1, 9), status="CANCELLED")))
    ).events[0]
    assert (event["STATUS"], event["TRANSP"]) == ("CANCELLED", "TRANSPARENT")


@pytest.mark.parametrize(
    ("start", "hours", "first", "beyond"),
    [
        (utc(2026, 12, 24), 24, date(2026, 12, 24), date(2026, 12, 25)),
        (utc(2026, 12, 24, 9), 3, date(2026, 12, 24), date(2026, 12, 25)),
        (utc(2026, 12, 24), 49, date(2026, 12, 24), date(2026, 12, 27)),
        # Summer: midnight in London is 23:00 UTC of the day before.
        (utc(2026, 6, 30, 23), 24, date(2026, 7, 1), date(2026, 7, 2)),
    ],
)
def test_whole_days_end_on_the_day_after_the_last(start, hours, first, beyond):
    raw = calendar_feed(feed(visit(1, start, hours * 60, all_day=True)))
    event = icalendar.Calendar.from_ical(raw).events[0]
    assert (event["DTSTART"].dt, event["DTEND"].dt) == (first, beyond)
    assert b"VTIMEZONE" not in raw


def test_an_empty_plan_is_a_feed_too():
    raw = calendar_feed(feed())
    assert faults_of(raw) == []
    assert icalendar.Calendar.from_ical(raw).events == []


def test_the_head_tells_readers_the_name_and_when_to_come_again():
    text = calendar_feed(feed()).decode()
    assert "REFRESH-INTERVAL;VALUE=DURATION:PT1H\r\n" in text
    assert "X-PUBLISHED-TTL:PT1H\r\n" in text
    assert text.count("Visits – Ann") == 2
    assert "METHOD" not in text
    assert "UID:3f0e6a1c-calendar@feeds.example.org\r\n" in text


def test_letters_from_outside_cannot_add_a_line():
    nasty = visit(1, utc(2026, 12, 1, 9), summary="x\r\nATTACH:https://evil.example\x00\x07", location="a\rb")
    text = calendar_feed(feed(nasty)).decode()
    assert "\r\nATTACH" not in text
    assert faults_of(text.encode()) == []


@pytest.mark.parametrize(
    "visits",
    [
        [visit(1, utc(2026, 12, 1, 9), 0)],
        [visit(1, utc(2026, 12, 1, 9), -5)],
        [visit(1, utc(2026, 12, 1, 9)), visit(1, utc(2026, 12, 2, 9))],
        [replace(visit(1, utc(2026, 12, 1, 9)), start=datetime(2026, 12, 1), end=datetime(2026, 12, 2))],  # noqa: DTZ001
    ],
)
def test_what_no_reader_could_show_is_refused(visits):
    with pytest.raises(ValueError, match=r"uid|end|zone"):
        calendar_feed(feed(*visits))


def test_the_feed_changed_when_its_last_visit_did():
    later = visit(2, utc(2026, 12, 2, 9), last_modified=utc(2026, 11, 22))
    assert feed_changed_at(feed(visit(1, utc(2026, 12, 1, 9)), later)) == utc(2026, 11, 22)
    assert feed_changed_at(feed()) is None
