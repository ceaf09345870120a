"""When somebody is busy by a calendar of theirs (iCalendar, RFC 5545): its bytes in, stretches of time out."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from zoneinfo import ZoneInfo

import recurring_ical_events
import x_wr_timezone
from icalendar import Calendar, Component, Event

from visits.documents.calendar_rules import (
    MOST_STEPS,
    MOST_STEPS_IN_ALL,
    WILD,
    CannotRead,
    refuse_too_much,
    steps_of,
)

LARGEST = 2_000_000
"""Bytes of a calendar."""
MOST_TIMES = 4_000
"""Stretches in the days that are looked at; somebody with ten a day has 1,200 in 120 days."""
MOST_SUMMARY = 80
MIDNIGHT = time(0)


@dataclass(frozen=True)
class BusyTime:
    """One stretch, aware; a whole day runs from midnight to midnight of the business's own zone."""

    uid: str
    starts: datetime
    ends: datetime
    is_all_day: bool
    summary: str


@dataclass(frozen=True)
class BusyTimes:
    """In their order. `left_out`: entries that could not be read or repeat without end of sense."""

    times: tuple[BusyTime, ...]
    left_out: int = 0


def read_busy_times(content: bytes, first: date, last: date, zone: ZoneInfo) -> BusyTimes:
    """The stretches that touch the days from `first` to `last` of `zone`, each repeat by itself.

    Entries that are called off or marked as free are none. A time without a zone is one of the calendar's own zone
    (X-WR-TIMEZONE), else of `zone`. CannotRead: it is no calendar, or one too large.
    """
    calendars = _calendars(content)
    begin, end = (datetime.combine(day, MIDNIGHT, zone) for day in (first, last + timedelta(days=1)))
    found: set[BusyTime] = set()
    left_out = 0
    for calendar in calendars:
        left_out += _drop_wild(calendar, last)
        for series in _series(calendar):
            times = _times(series, begin, end, zone)
            left_out += times is None
            found.update(times or ())
            if len(found) > MOST_TIMES:
                raise CannotRead(f"it is busy more than {MOST_TIMES:,} times")
    return BusyTimes(tuple(sorted(found, key=lambda each: (each.starts, each.ends, each.uid))), left_out)


def _calendars(content: bytes) -> list[Calendar]:
    if len(content) > LARGEST:
        raise CannotRead(f"it is larger than {LARGEST:,} bytes")
    refuse_too_much(content)
    try:
        found = Calendar.from_ical(content.removeprefix(b"\xef\xbb\xbf").strip(), multiple=True)
        calendars = [each for each in found if isinstance(each, Calendar)]
    except CannotRead:
        raise
    except (
        Exception
    ):  # because: what a stranger's file breaks in a parser is of many kinds, and means one thing
        raise CannotRead("it is no calendar (iCalendar, .ics)") from None
    if not calendars:
        raise CannotRead("it is no calendar (iCalendar, .ics)")
    return [_in_its_zone(calendar) for calendar in calendars]


def _in_its_zone(calendar: Calendar) -> Calendar:
    """A calendar may say one zone for all its times, those in UTC included: repeats go by its clock changes."""
    try:
        found: Calendar = x_wr_timezone.to_standard(calendar)
        return found
    except Exception:  # because: a zone that nobody knows is as good as none
        return calendar


def _drop_wild(calendar: Calendar, last: date) -> int:
    """Take out the entries whose rules are too much work until `last`, of many the worst; how many went."""
    work = [(_steps(event, last), number, event) for number, event in enumerate(calendar.walk("VEVENT"))]
    gone: set[int] = set()  # because: events compare by all they hold, which takes long
    left = MOST_STEPS_IN_ALL
    for steps, _, event in sorted(work, key=lambda each: each[:2]):
        left -= steps
        if steps > MOST_STEPS or left < 0:
            gone.add(id(event))
    calendar.subcomponents = [part for part in calendar.subcomponents if id(part) not in gone]
    return len(gone)


def _steps(event: Component, last: date) -> int:
    rules = event.get("RRULE")
    if rules is None:
        return 0
    try:
        begun: date = getattr(event["DTSTART"], "dt")  # noqa: B009  # because: a list of two has none
        return sum(steps_of(rule, begun, last) for rule in (rules if isinstance(rules, list) else [rules]))
    except (
        Exception
    ):  # because: a stranger's entry without a beginning, or with a broken one, fails in the library
        return WILD


def _series(calendar: Calendar) -> Iterable[Calendar]:
    """Each entry with those that change single times of it, as a calendar of its own: one bad entry spoils no other."""
    by_uid: dict[str, Calendar] = {}
    for number, event in enumerate(calendar.walk("VEVENT")):
        key = str(event.get("UID", "")) or f"no uid {number}"
        by_uid.setdefault(key, Calendar()).add_component(event)
    return by_uid.values()


def _times(series: Calendar, begin: datetime, end: datetime, zone: ZoneInfo) -> list[BusyTime] | None:
    """Every single time of it between the two; None where no sense can be made of it."""
    try:
        events = recurring_ical_events.of(series).between(begin, end)
        found = [busy for event in events if (busy := _busy(event, zone)) is not None]
    except Exception:  # because: what a stranger's entry breaks in the libraries is of many kinds
        return None
    return [busy for busy in found if busy.starts < end and busy.ends > begin]


def _busy(event: Component, zone: ZoneInfo) -> BusyTime | None:
    if not isinstance(event, Event) or _is_free(event):
        return None
    starts, ends = event.start, event.end
    is_all_day = not isinstance(starts, datetime)
    first, last = _instant(starts, zone), _instant(ends, zone)
    if last <= first:
        return None
    summary = " ".join(str(event.get("SUMMARY", "")).split())[:MOST_SUMMARY]
    return BusyTime(str(event.get("UID", ""))[:255], first, last, is_all_day, summary)


def _is_free(event: Event) -> bool:
    """Called off, or open to others: in the standard's word, or in the one that some calendars write beside it."""
    is_off = str(event.get("STATUS", "")).upper() == "CANCELLED"
    is_open = str(event.get("TRANSP", "")).upper() == "TRANSPARENT"
    return is_off or is_open or str(event.get("X-MICROSOFT-CDO-BUSYSTATUS", "")).upper() == "FREE"


def _instant(moment: date, zone: ZoneInfo) -> datetime:
    if not isinstance(moment, datetime):
        return datetime.combine(moment, MIDNIGHT, zone)
    return (moment if moment.tzinfo else moment.replace(tzinfo=zone)).astimezone(zone)
