"""The rule by which a time zone goes on: the POSIX footer of its zone file (RFC 9636, section 3.3; POSIX TZ).

Example: GMT0BST,M3.5.0/1,M10.5.0 is Greenwich time, summer time from the last Sunday of March at 01:00 to the last
Sunday of October at 02:00.
"""

import re
import zoneinfo
from dataclasses import dataclass
from datetime import timedelta
from importlib import resources
from pathlib import Path

_NAME = r"(<[^>]+>|[A-Za-z]{3,})"
_OFFSET = r"([+-]?\d{1,3}(?::\d{2}){0,2})"
_DAY = rf"M(\d{{1,2}})\.(\d)\.(\d)(?:/{_OFFSET})?"
_FOOTER = re.compile(rf"{_NAME}{_OFFSET}(?:{_NAME}{_OFFSET}?,{_DAY},{_DAY})?")


@dataclass(frozen=True)
class YearlyChange:
    """On the `week`th (5: last) `weekday` (0: Sunday) of `month`, `at` past midnight of the clock then in use."""

    month: int
    week: int
    weekday: int
    at: timedelta


@dataclass(frozen=True)
class ZoneRule:
    """Standard time's name and offset from UTC; summer time's, and when each begins, where there is one."""

    name: str
    offset: timedelta
    summer_name: str = ""
    summer_offset: timedelta = timedelta()
    summer_begins: YearlyChange | None = None
    summer_ends: YearlyChange | None = None


def zone_rule(key: str) -> ZoneRule | None:
    """The rule of an IANA zone; None where the footer has none that can be read (day-of-year rules, no footer)."""
    footer = zone_file(key).rsplit(b"\n", 2)[-2].decode("ascii")
    return read_footer(footer)


def read_footer(footer: str) -> ZoneRule | None:
    """The rule written as a POSIX TZ string, or None."""
    match = _FOOTER.fullmatch(footer)
    if match is None:
        return None
    name, offset, summer, summer_offset, *days = match.groups()
    standard = -_length(offset)
    if summer is None:
        return ZoneRule(name.strip("<>"), standard)
    ahead = -_length(summer_offset) if summer_offset else standard + timedelta(hours=1)
    begins, ends = _change(*days[:4]), _change(*days[4:])
    return ZoneRule(name.strip("<>"), standard, summer.strip("<>"), ahead, begins, ends)


def _change(month: str, week: str, weekday: str, at: str | None) -> YearlyChange:
    return YearlyChange(int(month), int(week), int(weekday), _length(at or "2"))


def _length(text: str) -> timedelta:
    hours, minutes, seconds = [*(int(part) for part in text.lstrip("+-").split(":")), 0, 0][:3]
    span = timedelta(hours=hours, minutes=minutes, seconds=seconds)
    return -span if text.startswith("-") else span


def zone_file(key: str) -> bytes:
    """What `ZoneInfo(key)` reads: the system's zone files, else the tzdata package."""
    zoneinfo.ZoneInfo(key)  # refuses names that are no zone, also such as lead out of the folder
    for folder in zoneinfo.TZPATH:
        file = Path(folder) / key
        if file.is_file():
            return file.read_bytes()
    return resources.files("tzdata").joinpath("zoneinfo", *key.split("/")).read_bytes()
