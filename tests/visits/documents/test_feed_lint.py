"""Who watches the watchman: our lint finds in each broken file (fixtures/documents/ical) its own fault."""

from pathlib import Path

import pytest

from tests.visits.documents.feed_lint import faults_of

FILES = Path(__file__).parents[3] / "fixtures" / "documents" / "ical"
MADE_WITH = {
    "alarm": "an alarm without TRIGGER",
    "comma": "has a bare comma or semicolon",
    "endb4": "ends before it starts",
    "enddur": "both DTEND and DURATION",
    "lf": "does not end in CRLF",
    "long": "longer than 75 octets",
    "nodtstamp": "0 of DTSTAMP",
    "notz": "no VTIMEZONE for",
    "nouid": "0 of UID",
    "prodid": "no PRODID",
    "status": "no such STATUS",
    "two_dtstart": "2 of DTSTART",
    "untillocal": "UNTIL is not in UTC",
}
OTHERS = {"REFRESH-INTERVAL without VALUE=DURATION", "several dates in one RDATE"}


@pytest.mark.parametrize(("name", "fault"), MADE_WITH.items())
def test_each_broken_file_is_refused_for_its_own_fault(name, fault):
    found = [one for one in faults_of((FILES / f"broken_{name}.ics").read_bytes()) if one not in OTHERS]
    assert any(fault in one for one in found), found


def test_no_broken_file_is_left_out():
    assert {file.stem for file in FILES.glob("broken_*.ics")} == {f"broken_{name}" for name in MADE_WITH}


def test_the_good_feed_passes():
    assert faults_of((FILES / "good_vtimezone_rrule.ics").read_bytes()) == []


@pytest.mark.parametrize(
    "name", ["trap_vtimezone_multivalue_rdate", "icalendar7_default_output_with_3_faults"]
)
def test_the_zone_trap_is_seen(name):
    assert "several dates in one RDATE" in faults_of((FILES / f"{name}.ics").read_bytes())
