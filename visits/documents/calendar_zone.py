"""A VTIMEZONE (RFC 5545, section 3.6.5) with the zone's rules, so that a reader needs no zone files of its own."""

from collections.abc import Iterable
from datetime import datetime
from functools import cache
from zoneinfo import ZoneInfo

from visits.documents.calendar_lines import clock_stamp, folded, offset_stamp, text_line
from visits.documents.zone_observances import Observance, zone_observances

UTC_NAMES = frozenset({"UTC", "Etc/UTC", "Etc/UCT", "Zulu", "Etc/Zulu", "Universal", "Etc/Universal", "UCT"})
_WEEKDAYS = ("SU", "MO", "TU", "WE", "TH", "FR", "SA")


def zone_lines(key: str, instants: Iterable[datetime]) -> str:
    """The zone's component for these instants; nothing without instants and for UTC, which stands in the times."""
    zone = ZoneInfo(key)
    years = {at.astimezone(zone).year for at in instants}
    return _component(key, min(years), max(years)) if years and key not in UTC_NAMES else ""


@cache
def _component(key: str, first_year: int, last_year: int) -> str:
    parts = "".join(map(_part, zone_observances(key, first_year, last_year)))
    return f"BEGIN:VTIMEZONE\r\n{folded(f'TZID:{key}')}{parts}END:VTIMEZONE\r\n"


def _part(observance: Observance) -> str:
    kind = "DAYLIGHT" if observance.is_summer else "STANDARD"
    rule = ""
    if yearly := observance.yearly:
        day = f"{-1 if yearly.week == 5 else yearly.week}{_WEEKDAYS[yearly.weekday]}"
        rule = f"RRULE:FREQ=YEARLY;BYDAY={day};BYMONTH={yearly.month}\r\n"
    return (
        f"BEGIN:{kind}\r\n"
        f"DTSTART:{clock_stamp(observance.starts)}\r\n{rule}"
        f"{text_line('TZNAME', observance.name) if observance.name else ''}"
        f"TZOFFSETFROM:{offset_stamp(observance.offset_from)}\r\n"
        f"TZOFFSETTO:{offset_stamp(observance.offset_to)}\r\n"
        f"END:{kind}\r\n"
    )


def wall_time(name: str, at: datetime, zone: ZoneInfo) -> str:
    """A line of an instant by the zone's clock; in UTC within an hour that happens twice, where readers disagree.

    ValueError: an instant without a zone.
    """
    if at.tzinfo is None:
        raise ValueError("a visit's time has no time zone")
    local = at.astimezone(zone)
    if zone.key in UTC_NAMES or _happens_twice(local):
        return f"{name}:{at.astimezone(ZoneInfo('UTC')).strftime('%Y%m%dT%H%M%SZ')}\r\n"
    return folded(f"{name};TZID={zone.key}:{clock_stamp(local)}")


def _happens_twice(local: datetime) -> bool:
    return local.replace(fold=0).utcoffset() != local.replace(fold=1).utcoffset()
