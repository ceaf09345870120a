"""VTIMEZONE from the rule at the end of a zone's TZif file, written with RRULEs.

Some calendar programs read only the first of several RDATEs and then show summer an hour off, so the zone is written
as the POSIX rule says (RFC 8536, 3.3; POSIX TZ, e.g. "GMT0BST,M3.5.0/1,M10.5.0") and not as a list of changes.
"""

import re
from datetime import datetime, timedelta
from importlib import resources

from icalendar import Timezone, TimezoneDaylight, TimezoneStandard
from icalendar.prop import vRecur

DAYS = ("SU", "MO", "TU", "WE", "TH", "FR", "SA")
_NAME = r"(<[^>]+>|[A-Za-z]+)"
_OFFSET = r"([+-]?\d+(?::\d+)*)"
_RULE = re.compile(
    rf"^{_NAME}{_OFFSET}(?:{_NAME}{_OFFSET}?,M([\d.]+)(?:/(-?[\d:]+))?,M([\d.]+)(?:/(-?[\d:]+))?)?$"
)


def calendar_zone(zone: str) -> Timezone:
    """The VTIMEZONE of an IANA zone as its rule stands now. ValueError for a zone whose rule cannot be written."""
    match = _RULE.match(posix_rule(zone))
    if match is None:
        raise ValueError(f"the rule of {zone} cannot be written as a yearly rule")
    name, offset, summer, summer_offset, begins, begins_at, ends, ends_at = match.groups()
    standard = -_seconds(offset)
    block = Timezone()
    block.add("TZID", zone)
    if summer is None:
        block.add_component(_part(TimezoneStandard(), name, standard, standard))
        return block
    daylight = -_seconds(summer_offset) if summer_offset else standard + 3600
    block.add_component(_part(TimezoneDaylight(), summer, standard, daylight, begins, begins_at))
    block.add_component(_part(TimezoneStandard(), name, daylight, standard, ends, ends_at))
    return block


def posix_rule(zone: str) -> str:
    """The last line of the zone's TZif file. ValueError for an unknown zone."""
    package, _, name = f"tzdata/zoneinfo/{zone}".rpartition("/")
    try:
        content = resources.files(package.replace("/", ".")).joinpath(name).read_bytes()
    except (ModuleNotFoundError, FileNotFoundError):
        raise ValueError(f"no zone is called {zone}") from None
    return content.rstrip(b"\n").rsplit(b"\n", 1)[1].decode()


def _part(
    part: TimezoneStandard | TimezoneDaylight,
    name: str,
    before: int,
    after: int,
    rule: str | None = None,
    clock: str | None = None,
) -> TimezoneStandard | TimezoneDaylight:
    part.add("TZNAME", name.strip("<>"))
    part.add("TZOFFSETFROM", timedelta(seconds=before))
    part.add("TZOFFSETTO", timedelta(seconds=after))
    if rule is None:
        part.add("DTSTART", datetime(1970, 1, 1))  # noqa: DTZ001 because: a zone's own onset is local time
        return part
    month, week, day = (int(number) for number in rule.split("."))
    onset = _first_onset(month, week, day) + timedelta(seconds=_seconds(clock or "2"))
    part.add("DTSTART", onset)
    nth = -1 if week == 5 else week
    part.add("RRULE", vRecur({"FREQ": "YEARLY", "BYMONTH": month, "BYDAY": f"{nth}{DAYS[day]}"}))
    return part


def _first_onset(month: int, week: int, day: int) -> datetime:
    """Midnight of the nth such weekday of the month in 1970 (week 5 is the last)."""
    first = datetime(1970, month, 1)  # noqa: DTZ001 because: a zone's own onset is local time
    found = first + timedelta(days=(day - first.isoweekday() % 7) % 7 + 7 * (week - 1))
    while found.month != month:
        found -= timedelta(days=7)
    return found


def _seconds(clock: str) -> int:
    sign = -1 if clock.startswith("-") else 1
    parts = [int(part) for part in clock.lstrip("+-").split(":")]
    hours, minutes, seconds = (*parts, 0, 0)[:3]
    return sign * (hours * 3600 + minutes * 60 + seconds)
