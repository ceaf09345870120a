"""Invitations against the tables of RFC 5546, and read back by three libraries."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import icalendar
import pytest
import vobject
from hypothesis import given
from hypothesis import strategies as st

from tests.services.ical_js import has_node, read_by_ical_js
from tests.visits.documents.feed_lint import faults_of
from tests.visits.documents.itip_lint import itip_faults
from tests.visits.documents.zone_edges import AROUND, utc
from visits.documents.calendar_feed import calendar_feed
from visits.documents.calendar_feed_content import CalendarFeed, CalendarVisit
from visits.documents.visit_invitation import CalendarUser, InvitedVisit, visit_invitation

VISIT = CalendarVisit(
    uid="0b0f6c3e-0d5b-4f62-9d0e-7f7f5f3a2b11@visits.trimops",
    sequence=3,
    last_modified=datetime(2026, 3, 2, 12, tzinfo=UTC),
    start=utc(2026, 3, 3, 10),
    end=utc(2026, 3, 3, 12, 19),
    summary="Foot trimming at Low Croft",
    location="Down the track, Nowhere",
    lat=54.1,
    lon=-2.3,
)
INVITED = InvitedVisit(
    VISIT,
    CalendarUser("office@ash-rye.example", "Ash & Rye Foot Trimming"),
    CalendarUser("herd@low-croft.example", "H. Manager"),
    "Europe/London",
)


def lines_of(raw):
    return raw.decode().replace("\r\n ", "").split("\r\n")


@pytest.mark.parametrize("method", ["REQUEST", "CANCEL"])
def test_both_papers_keep_the_tables_of_the_rfc_and_pass_lint_and_validator(method):
    raw = visit_invitation(INVITED, method)
    assert itip_faults(raw) == faults_of(raw) == []
    assert vobject.readOne(raw.decode()).validate(raiseException=True)


@pytest.mark.parametrize(
    ("was", "becomes", "fault"),
    [
        (b"METHOD:REQUEST\r\n", b"", "0 of METHOD"),
        (b"SEQUENCE:3\r\n", b"", "0 of SEQUENCE"),
        (b"ORGANIZER", b"X-ORGANIZER", "0 of ORGANIZER"),
        (b"ATTENDEE", b"X-ATTENDEE", "0 of ATTENDEE"),
        (b"STATUS:CONFIRMED", b"STATUS:CANCELLED", "status STATUS:CANCELLED"),
        (b"DTEND;TZID", b"DURATION:PT1H\r\nDTEND;TZID", "both DTEND and DURATION"),
        (b"END:VEVENT", b"REQUEST-STATUS:2.0;Success\r\nEND:VEVENT", "1 of REQUEST-STATUS"),
    ],
)
def test_the_lint_sees_each_breach(was, becomes, fault):
    raw = visit_invitation(INVITED, "REQUEST")
    assert was in raw
    assert fault in itip_faults(raw.replace(was, becomes))


def test_the_event_is_the_feeds_with_people_on_it():
    feed = calendar_feed(CalendarFeed("1@x", "Low Croft", "Europe/London", (VISIT,))).decode()
    event = feed[feed.index("BEGIN:VEVENT") : feed.index("END:VEVENT")]
    assert visit_invitation(INVITED, "REQUEST").decode().count(event) == 1


def test_a_guest_is_asked_for_an_answer_and_sees_nobody_else():
    lines = lines_of(visit_invitation(INVITED, "REQUEST"))
    assert 'ORGANIZER;CN="Ash & Rye Foot Trimming":mailto:office@ash-rye.example' in lines
    assert [line for line in lines if line.startswith("ATTENDEE")] == [
        "ATTENDEE;CUTYPE=INDIVIDUAL;ROLE=REQ-PARTICIPANT;PARTSTAT=NEEDS-ACTION;RSVP=TRUE"
        ';CN="H. Manager":mailto:herd@low-croft.example'
    ]


def test_the_taking_back_has_the_uid_the_sequence_and_asks_nothing():
    lines = lines_of(visit_invitation(replace(INVITED, visit=replace(VISIT, sequence=4)), "CANCEL"))
    assert {f"UID:{VISIT.uid}", "SEQUENCE:4", "STATUS:CANCELLED", "METHOD:CANCEL"} <= set(lines)
    assert not any("RSVP" in line for line in lines)


def test_the_same_news_is_the_same_bytes_and_its_stamp_is_the_visits_last_change():
    raw = visit_invitation(INVITED, "REQUEST")
    assert raw == visit_invitation(INVITED, "REQUEST")
    assert b"DTSTAMP:20260302T120000Z\r\n" in raw


@given(
    name=st.text(st.characters(codec="utf-8", exclude_categories=("Cc", "Cs", "Cf")), max_size=40),
    odd=st.sampled_from(["", '"', "^n", "^", ":;,", "\n", "\r\nATTENDEE:mailto:evil@x.example"]),
)
def test_no_name_adds_a_line_and_every_name_comes_back(name, odd):
    guest = CalendarUser("a@low-croft.example", f"{name}{odd}")
    raw = visit_invitation(replace(INVITED, guest=guest), "REQUEST")
    assert itip_faults(raw) == [fault for fault in faults_of(raw) if "several" not in fault] == []
    lines = [line for line in lines_of(raw) if line.startswith("ATTENDEE")]
    assert len(lines) == 1
    event = icalendar.Calendar.from_ical(raw).events[0]
    assert str(event["ATTENDEE"]) == "mailto:a@low-croft.example"


def test_a_name_with_quotes_and_circumflexes_is_coded_by_rfc_6868():
    guest = CalendarUser("a@low-croft.example", 'Ann "Red" Fell ^ Dale')
    event = icalendar.Calendar.from_ical(visit_invitation(replace(INVITED, guest=guest), "REQUEST")).events[0]
    assert event["ATTENDEE"].params["CN"] == guest.name
    assert b"CN=\"Ann ^'Red^' Fell ^^ Dale\"" in visit_invitation(replace(INVITED, guest=guest), "REQUEST")


@pytest.mark.parametrize("address", ["", "nobody", "@x.example", "a@", "a b@x.example", "a@x.example\r\nX:1"])
def test_what_is_no_address_is_refused(address):
    with pytest.raises(ValueError, match="no mail address"):
        visit_invitation(replace(INVITED, guest=CalendarUser(address)), "REQUEST")


def test_odd_letters_of_an_address_are_coded():
    guest = CalendarUser("a%b#c?d@x.example")
    assert b":mailto:a%25b%23c%3Fd@x.example\r\n" in visit_invitation(
        replace(INVITED, guest=guest), "REQUEST"
    )


@pytest.mark.parametrize("changes", [{"all_day": True}, {"status": "CANCELLED"}])
def test_nobody_is_invited_to_a_day_or_to_what_is_off(changes):
    with pytest.raises(ValueError, match="invit"):
        visit_invitation(replace(INVITED, visit=replace(VISIT, **changes)), "REQUEST")


@pytest.mark.parametrize(
    "zone", ["Europe/London", "America/New_York", "Australia/Lord_Howe", "Africa/Casablanca"]
)
def test_others_read_the_very_hour_over_each_change_of_the_clock(zone):
    for start in AROUND[zone]:
        visit = replace(VISIT, start=start, end=start + timedelta(minutes=40))
        raw = visit_invitation(replace(INVITED, visit=visit, zone=zone), "REQUEST")
        assert itip_faults(raw) == faults_of(raw) == []
        event = icalendar.Calendar.from_ical(raw).events[0]
        by_vobject = vobject.readOne(raw.decode()).vevent
        assert event["DTSTART"].dt == by_vobject.dtstart.value == start
        assert event["DTEND"].dt == by_vobject.dtend.value == start + timedelta(minutes=40)


@pytest.mark.skipif(not has_node(), reason="no node on this machine")
def test_a_program_in_javascript_reads_it_too():
    ((uid, start, end),) = read_by_ical_js(visit_invitation(INVITED, "REQUEST"))
    assert (uid, start.replace(tzinfo=UTC), end.replace(tzinfo=UTC)) == (VISIT.uid, VISIT.start, VISIT.end)
