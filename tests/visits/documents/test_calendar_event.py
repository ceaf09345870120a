"""Whole feeds of random visits, byte for byte against the icalendar library's."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.random_examples import examples
from tests.visits.documents.feed_by_library import feed_by_library
from tests.visits.documents.feed_lint import faults_of
from tests.visits.documents.test_calendar_lines import TEXTS
from tests.visits.documents.zone_edges import AROUND, utc
from visits.documents.calendar_event import alarm_lines, event_lines
from visits.documents.calendar_feed import calendar_feed
from visits.documents.calendar_feed_content import CalendarFeed, CalendarVisit

INSTANTS = st.datetimes(datetime(2025, 1, 1), datetime(2030, 1, 1), timezones=st.just(UTC))  # noqa: DTZ001
DEGREES = st.one_of(st.none(), st.floats(-90, 90).filter(lambda degree: abs(degree) > 0.0001))
VISITS = st.builds(
    CalendarVisit,
    uid=st.uuids().map(lambda uid: f"{uid}@visits.trimops"),
    sequence=st.integers(0, 99),
    last_modified=INSTANTS,
    start=INSTANTS,
    end=INSTANTS,
    summary=TEXTS.filter(bool),
    location=TEXTS,
    lat=DEGREES,
    lon=DEGREES,
    description=TEXTS,
    status=st.sampled_from(("TENTATIVE", "CONFIRMED", "CANCELLED")),
    url=st.sampled_from(("", "https://example.org/visits/1/")),
    all_day=st.booleans(),
    rings=st.booleans(),
)
# because: names that begin with X the library neither escapes nor refuses, and a line break there is its end
PLAIN = st.text(st.sampled_from("abc é–ノ"), min_size=1, max_size=120)
FEEDS = st.builds(
    CalendarFeed,
    uid=st.just("one@visits.trimops"),
    name=PLAIN,
    zone=st.sampled_from(sorted(AROUND)),
    visits=st.lists(VISITS, max_size=4, unique_by=lambda visit: visit.uid).map(tuple),
    description=st.one_of(st.just(""), PLAIN),
    refresh=st.sampled_from((timedelta(hours=1), timedelta(minutes=90))),
    alarm=st.sampled_from((None, timedelta(minutes=15), timedelta(hours=2))),
)


def in_order(feed: CalendarFeed) -> CalendarFeed:
    """Its visits end after they start, whatever was drawn."""
    ends = [max(visit.end, visit.start + timedelta(minutes=1)) for visit in feed.visits]
    return replace(feed, visits=tuple(replace(v, end=end) for v, end in zip(feed.visits, ends, strict=True)))


@settings(max_examples=examples(300))
@given(feed=FEEDS)
def test_a_feed_is_byte_for_byte_the_librarys(feed):
    feed = in_order(feed)
    raw = calendar_feed(feed)
    assert raw == feed_by_library(feed)
    assert [fault for fault in faults_of(raw) if "several dates" not in fault] == []


@pytest.mark.parametrize("zone", AROUND)
def test_visits_at_the_edges_of_each_zone_are_the_librarys_too(zone):
    visits = tuple(
        CalendarVisit(f"{i}@visits.trimops", 0, start, start, start + timedelta(hours=2), "Low Croft")
        for i, start in enumerate(AROUND[zone])
    )
    feed = CalendarFeed("one@visits.trimops", "Edges", zone, visits)
    assert calendar_feed(feed) == feed_by_library(feed)


def test_a_place_near_the_line_is_a_number_that_every_reader_knows():
    """RFC 5545's FLOAT has no exponent; the library writes 1e-05."""
    visit = CalendarVisit(
        "1@x", 0, utc(2026, 1, 1), utc(2026, 1, 1), utc(2026, 1, 2), "x", lat=0.00001, lon=-0.000002
    )
    assert "GEO:0.00001;-0.000002\r\n" in event_lines(visit, ZoneInfo("UTC"))


def test_the_name_is_escaped_in_both_places():
    lines = calendar_feed(CalendarFeed("1@x", "Ash; Rye,\nTrimming", "UTC", ())).decode().split("\r\n")
    assert {"NAME:Ash\\; Rye\\,\\nTrimming", "X-WR-CALNAME:Ash\\; Rye\\,\\nTrimming"} <= set(lines)


def test_an_alarm_shows_the_summary():
    visit = CalendarVisit("1@x", 0, utc(2026, 1, 1), utc(2026, 1, 1), utc(2026, 1, 2), "Low Croft, 12 cows")
    assert alarm_lines(visit, timedelta(minutes=45)).split("\r\n") == [
        "BEGIN:VALARM", "ACTION:DISPLAY", "DESCRIPTION:Low Croft\\, 12 cows", "TRIGGER:-PT45M", "END:VALARM", "",
    ]  # fmt: skip
