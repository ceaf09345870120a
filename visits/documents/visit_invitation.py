"""A visit as an invitation to somebody's own calendar, and its taking back (iTIP, RFC 5546, 3.2.2 and 3.2.5).

The event is the feed's: the same UID and SEQUENCE. Each guest gets a paper of his own that names nobody else. DTSTAMP
is the visit's last change, so that the same news is the same bytes.
"""

from dataclasses import dataclass, replace
from typing import Literal
from urllib.parse import quote
from zoneinfo import ZoneInfo

from trimops.paper.wording import clean
from visits.documents.calendar_event import event_lines
from visits.documents.calendar_feed import MAKER
from visits.documents.calendar_feed_content import CalendarVisit
from visits.documents.calendar_lines import folded
from visits.documents.calendar_zone import zone_lines

Method = Literal["REQUEST", "CANCEL"]
_OF_AN_ADDRESS = "@!$&'*+-=_.~"


@dataclass(frozen=True)
class CalendarUser:
    """A person or a business with a mail address."""

    address: str
    name: str = ""


@dataclass(frozen=True)
class InvitedVisit:
    """The visit, who asks for it and who is asked; `zone` an IANA name."""

    visit: CalendarVisit
    organizer: CalendarUser
    guest: CalendarUser
    zone: str


def visit_invitation(invited: InvitedVisit, method: Method) -> bytes:
    """The calendar part of the mail, for `Content-Type: text/calendar; method=...` (RFC 6047, section 2.4).

    ValueError: an address that is none, a whole day, an invitation to what is called off.
    """
    visit = invited.visit
    if visit.all_day:
        raise ValueError("a visit without an hour is no invitation")
    if method == "REQUEST" and visit.status == "CANCELLED":
        raise ValueError("nobody is invited to what is called off")
    if method == "CANCEL":
        visit = replace(visit, status="CANCELLED")
    people = _organizer(invited.organizer) + _attendee(invited.guest, asks=method == "REQUEST")
    return (
        f"BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:{MAKER}\r\nCALSCALE:GREGORIAN\r\nMETHOD:{method}\r\n"
        f"{zone_lines(invited.zone, (visit.start, visit.end))}"
        f"{event_lines(visit, ZoneInfo(invited.zone), people)}END:VCALENDAR\r\n"
    ).encode()


def _organizer(user: CalendarUser) -> str:
    return folded(f"ORGANIZER{_name(user)}:{_uri(user)}")


def _attendee(user: CalendarUser, *, asks: bool) -> str:
    answer = ";ROLE=REQ-PARTICIPANT;PARTSTAT=NEEDS-ACTION;RSVP=TRUE" if asks else ""
    return folded(f"ATTENDEE;CUTYPE=INDIVIDUAL{answer}{_name(user)}:{_uri(user)}")


def _name(user: CalendarUser) -> str:
    """The name as a quoted parameter; what a quoted one cannot hold by RFC 6868."""
    text = clean(user.name).strip()
    coded = text.replace("^", "^^").replace("\n", "^n").replace('"', "^'")
    return f';CN="{coded}"' if coded else ""


def _uri(user: CalendarUser) -> str:
    local, at, domain = user.address.rpartition("@")
    if not (local and at and domain) or any(letter.isspace() for letter in user.address):
        raise ValueError(f"“{user.address}” is no mail address")
    return f"mailto:{quote(user.address, safe=_OF_AN_ADDRESS)}"
