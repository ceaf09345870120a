"""The same feed put together by the icalendar library: what our own lines are held against, in bytes and in time."""

from datetime import UTC, date, datetime, timedelta
from zoneinfo import ZoneInfo

from icalendar import (
    Alarm,
    Calendar,
    Event,
    Timezone,
    TimezoneDaylight,
    TimezoneStandard,
    vDatetime,
    vDuration,
)

from trimops.paper.wording import clean
from visits.documents.calendar_feed_content import CalendarFeed, CalendarVisit
from visits.documents.zone_observances import Observance, zone_observances

_UTC_NAMES = frozenset({"UTC", "Etc/UTC", "Etc/UCT", "Zulu", "Etc/Zulu", "Universal", "Etc/Universal", "UCT"})
_WEEKDAYS = ("SU", "MO", "TU", "WE", "TH", "FR", "SA")


def feed_by_library(feed: CalendarFeed) -> bytes:
    return bytes(library_calendar(feed).to_ical())


def library_calendar(feed: CalendarFeed) -> Calendar:
    """The library's objects, ready to be written."""
    visits = sorted(feed.visits, key=lambda visit: (visit.start, visit.uid))
    calendar = _head(feed)
    timed = [visit for visit in visits if not visit.all_day]
    if timed and feed.zone not in _UTC_NAMES:
        calendar.add_component(_zone(feed.zone, timed))
    for visit in visits:
        event = _event(visit, ZoneInfo(feed.zone))
        if feed.alarm and visit.rings and not visit.all_day and visit.status != "CANCELLED":
            event.add_component(_alarm(visit, feed.alarm))
        calendar.add_component(event)
    return calendar


def _head(feed: CalendarFeed) -> Calendar:
    calendar = Calendar()
    calendar.add("PRODID", "-//trimops//visits 1//EN")
    calendar.add("VERSION", "2.0")
    calendar.add("CALSCALE", "GREGORIAN")
    calendar.add("UID", feed.uid)
    for key in ("NAME", "X-WR-CALNAME"):
        calendar.add(key, clean(feed.name))
    if feed.description:
        for key in ("DESCRIPTION", "X-WR-CALDESC"):
            calendar.add(key, clean(feed.description))
    calendar.add("REFRESH-INTERVAL", vDuration(feed.refresh), parameters={"VALUE": "DURATION"})
    calendar.add("X-PUBLISHED-TTL", vDuration(feed.refresh))
    return calendar


def _event(visit: CalendarVisit, zone: ZoneInfo) -> Event:
    event = Event()
    event.add("UID", visit.uid)
    event.add("SEQUENCE", visit.sequence)
    for key in ("DTSTAMP", "LAST-MODIFIED"):
        event.add(key, vDatetime(visit.last_modified.astimezone(UTC).replace(microsecond=0)))
    _add_times(event, visit, zone)
    event.add("SUMMARY", clean(visit.summary))
    for key, text in (("LOCATION", visit.location), ("DESCRIPTION", visit.description)):
        if text:
            event.add(key, clean(text))
    if visit.lat is not None and visit.lon is not None:
        event.add("GEO", (round(visit.lat, 6), round(visit.lon, 6)))
    if visit.url:
        event.add("URL", visit.url)
    event.add("STATUS", visit.status)
    event.add("TRANSP", "TRANSPARENT" if visit.status == "CANCELLED" or visit.all_day else "OPAQUE")
    event.add("CLASS", "PRIVATE")
    return event


def _add_times(event: Event, visit: CalendarVisit, zone: ZoneInfo) -> None:
    if visit.all_day:
        first, beyond = _days(visit.start.astimezone(zone), visit.end.astimezone(zone))
        event.add("DTSTART", first)
        event.add("DTEND", beyond)
        return
    event.add("DTSTART", _wall(visit.start, zone))
    event.add("DTEND", _wall(visit.end, zone))


def _days(start: datetime, end: datetime) -> tuple[date, date]:
    last = (end - timedelta(microseconds=1)).date() if end.time() == datetime.min.time() else end.date()
    return start.date(), max(start.date(), last) + timedelta(days=1)


def _wall(at: datetime, zone: ZoneInfo) -> datetime:
    local = at.astimezone(zone).replace(microsecond=0)
    happens_twice = local.replace(fold=0).utcoffset() != local.replace(fold=1).utcoffset()
    return local.astimezone(UTC) if happens_twice or zone.key in _UTC_NAMES else local


def _zone(key: str, visits: list[CalendarVisit]) -> Timezone:
    years = [at.astimezone(ZoneInfo(key)).year for visit in visits for at in (visit.start, visit.end)]
    zone = Timezone()
    zone.add("TZID", key)
    for observance in zone_observances(key, min(years), max(years)):
        zone.add_component(_part(observance))
    return zone


def _part(observance: Observance) -> TimezoneDaylight | TimezoneStandard:
    part = TimezoneDaylight() if observance.is_summer else TimezoneStandard()
    part.add("DTSTART", observance.starts)
    part.add("TZOFFSETFROM", observance.offset_from)
    part.add("TZOFFSETTO", observance.offset_to)
    if observance.name:
        part.add("TZNAME", observance.name)
    if observance.yearly:
        yearly = observance.yearly
        day = f"{-1 if yearly.week == 5 else yearly.week}{_WEEKDAYS[yearly.weekday]}"
        part.add("RRULE", {"FREQ": "YEARLY", "BYMONTH": yearly.month, "BYDAY": day})
    return part


def _alarm(visit: CalendarVisit, before: timedelta) -> Alarm:
    alarm = Alarm()
    alarm.add("ACTION", "DISPLAY")
    alarm.add("DESCRIPTION", clean(visit.summary))
    alarm.add("TRIGGER", -before)
    return alarm
