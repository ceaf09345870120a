"""The plan as an iCalendar feed (RFC 5545, 7986) for calendar programs that subscribe to an address.

Visits are single events, no recurrence. No METHOD: with one, RFC 5546 would want an organizer. DTSTAMP is the visit's
last change, so that an unchanged plan gives the same bytes and its ETag holds.
"""

from datetime import datetime
from zoneinfo import ZoneInfo

from trimops.paper.wording import clean
from visits.documents.calendar_event import alarm_lines, event_lines
from visits.documents.calendar_feed_content import CalendarFeed, CalendarVisit
from visits.documents.calendar_lines import folded, span_stamp, text_line
from visits.documents.calendar_zone import zone_lines

MAKER = "-//trimops//visits 1//EN"


def calendar_feed(feed: CalendarFeed) -> bytes:
    """The feed's bytes: CRLF, lines folded at 75 octets, visits by time. The same feed gives the same bytes.

    ValueError: a visit that ends before it starts, a naive instant, a uid used twice.
    """
    visits = sorted(feed.visits, key=lambda visit: (visit.start, visit.uid))
    if len({visit.uid for visit in visits}) != len(visits):
        raise ValueError("two visits have the same uid")
    zone = ZoneInfo(feed.zone)
    events = "".join(event_lines(visit, zone, _alarm(visit, feed)) for visit in visits)
    timed = (at for visit in visits if not visit.all_day for at in (visit.start, visit.end))
    return f"{_head(feed)}{zone_lines(feed.zone, timed)}{events}END:VCALENDAR\r\n".encode()


def feed_changed_at(feed: CalendarFeed) -> datetime | None:
    """The last change of any visit, for the Last-Modified header; None for an empty feed."""
    return max((visit.last_modified for visit in feed.visits), default=None)


def _head(feed: CalendarFeed) -> str:
    refresh, name, said = span_stamp(feed.refresh), clean(feed.name), clean(feed.description)
    described = text_line("DESCRIPTION", said) + text_line("X-WR-CALDESC", said) if said else ""
    return (
        f"BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:{MAKER}\r\nCALSCALE:GREGORIAN\r\n{described}"
        f"{text_line('NAME', name)}{text_line('X-WR-CALNAME', name)}"
        f"REFRESH-INTERVAL;VALUE=DURATION:{refresh}\r\n{folded(f'UID:{feed.uid}')}X-PUBLISHED-TTL:{refresh}\r\n"
    )


def _alarm(visit: CalendarVisit, feed: CalendarFeed) -> str:
    if feed.alarm is None or not visit.rings or visit.all_day or visit.status == "CANCELLED":
        return ""
    return alarm_lines(visit, feed.alarm)
