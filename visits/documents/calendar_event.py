"""One VEVENT (RFC 5545, section 3.6.1), the same in a feed and in an invitation."""

from datetime import date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from trimops.paper.wording import clean
from visits.documents.calendar_feed_content import CalendarVisit
from visits.documents.calendar_lines import day_stamp, folded, span_stamp, text_line, utc_stamp
from visits.documents.calendar_zone import wall_time


def event_lines(visit: CalendarVisit, zone: ZoneInfo, extra: str = "") -> str:
    """The event's lines in the order in which the icalendar library puts them; `extra` is whole lines before its end.

    ValueError: a visit that ends before it starts, a naive instant.
    """
    if visit.end <= visit.start:
        raise ValueError(f"visit {visit.uid} does not end after its start")
    stamp = utc_stamp(visit.last_modified)
    start, end = _days(visit, zone) if visit.all_day else _hours(visit, zone)
    is_free = visit.all_day or visit.status == "CANCELLED"
    return (
        f"BEGIN:VEVENT\r\n{text_line('SUMMARY', clean(visit.summary))}{start}{end}"
        f"DTSTAMP:{stamp}\r\n{folded(f'UID:{visit.uid}')}SEQUENCE:{visit.sequence}\r\nCLASS:PRIVATE\r\n"
        f"{text_line('DESCRIPTION', clean(visit.description)) if visit.description else ''}"
        f"{_place(visit)}LAST-MODIFIED:{stamp}\r\n"
        f"{text_line('LOCATION', clean(visit.location)) if visit.location else ''}"
        f"STATUS:{visit.status}\r\nTRANSP:{'TRANSPARENT' if is_free else 'OPAQUE'}\r\n"
        f"{folded(f'URL:{visit.url}') if visit.url else ''}"
        f"{extra}END:VEVENT\r\n"
    )


def alarm_lines(visit: CalendarVisit, before: timedelta) -> str:
    """A VALARM that shows the summary (section 3.6.6)."""
    return (
        f"BEGIN:VALARM\r\nACTION:DISPLAY\r\n{text_line('DESCRIPTION', clean(visit.summary))}"
        f"TRIGGER:{span_stamp(-before)}\r\nEND:VALARM\r\n"
    )


def _place(visit: CalendarVisit) -> str:
    if visit.lat is None or visit.lon is None:
        return ""
    return f"GEO:{_degrees(visit.lat)};{_degrees(visit.lon)}\r\n"


def _degrees(value: float) -> str:
    """Without an exponent, which RFC 5545's FLOAT does not know."""
    text = str(round(value, 6))
    return f"{value:.6f}".rstrip("0") if "e" in text else text


def _hours(visit: CalendarVisit, zone: ZoneInfo) -> tuple[str, str]:
    return wall_time("DTSTART", visit.start, zone), wall_time("DTEND", visit.end, zone)


def _days(visit: CalendarVisit, zone: ZoneInfo) -> tuple[str, str]:
    first, beyond = _first_and_beyond(visit.start.astimezone(zone), visit.end.astimezone(zone))
    return f"DTSTART;VALUE=DATE:{day_stamp(first)}\r\n", f"DTEND;VALUE=DATE:{day_stamp(beyond)}\r\n"


def _first_and_beyond(start: datetime, end: datetime) -> tuple[date, date]:
    """First day and the day after the last (DTEND is exclusive)."""
    last = (end - timedelta(microseconds=1)).date() if end.time() == time(0) else end.date()
    return start.date(), max(start.date(), last) + timedelta(days=1)
