"""How much work the rules of a stranger's calendar would be, told before anybody turns them."""

from calendar import monthrange
from collections.abc import Mapping, Sequence
from datetime import date, datetime
from math import prod

MOST_EVENTS = 5_000
MOST_CHANGES = 2_000
MOST_PARTS = 20_000
"""Entries with their alarms, zones with their changes, and what nobody knows."""
MOST_STEPS = 60_000
"""Of one rule, up to the last day that is asked for: daily since 1900 is 46,000. About 30 microseconds each."""
MOST_STEPS_IN_ALL = 500_000
EARLIEST = 1600
SECONDS = {"SECONDLY": 1, "MINUTELY": 60, "HOURLY": 3600}
# A week, a month or a year is turned at once, and costs about as much as some days.
DAYS_BETWEEN = {"WEEKLY": 3, "MONTHLY": 6, "YEARLY": 10}
DAY_SECONDS = 86_400
LEAP_YEAR = 2028
TIMES = ("BYHOUR", "BYMINUTE", "BYSECOND")
WILD = MOST_STEPS + 1

Rule = Mapping[str, Sequence[object]]
"""The parts of a RRULE by their names in capitals (RFC 5545, 3.3.10)."""


class CannotRead(Exception):
    """The text is the end of "It was not read: …"."""


def refuse_too_much(content: bytes) -> None:
    """CannotRead for more entries or changes of zones than people have. Counted before anything is made of them."""
    lines = content.upper()
    if lines.count(b"BEGIN:VEVENT") > MOST_EVENTS:
        raise CannotRead(f"it holds more than {MOST_EVENTS:,} entries")
    if lines.count(b"BEGIN:STANDARD") + lines.count(b"BEGIN:DAYLIGHT") > MOST_CHANGES:
        raise CannotRead("it holds too many time zones")
    if lines.count(b"BEGIN:") > MOST_PARTS:
        raise CannotRead("it holds too many parts")


def steps_of(rule: Rule, begun: date, last: date) -> int:
    """About how often it is turned from `begun` to `last`; WILD where it has no end of sense, or no sense."""
    try:
        return _steps(rule, _day(begun), last)
    except (KeyError, AttributeError, TypeError, ValueError, IndexError):
        return WILD


def _steps(rule: Rule, begun: date, last: date) -> int:
    if begun.year < EARLIEST or _number(rule.get("INTERVAL", [1])[0]) < 1 or _never_comes(rule):
        return WILD
    often = str(rule["FREQ"][0]).upper()
    ends = min([last, *map(_day, rule.get("UNTIL", []))])
    days = max((ends - begun).days, 0) + 1
    if often in SECONDS:
        # because: rules that go by the hour and never match walk on hour by hour to the year 9999
        return WILD if _narrows(rule) else days * DAY_SECONDS // SECONDS[often]
    turns = days // DAYS_BETWEEN.get(often, 1) + 1
    return turns * prod(len(set(map(str, rule.get(name, ())))) or 1 for name in TIMES)


def _never_comes(rule: Rule) -> bool:
    """Whether it names only days that no year has (30 February), or the fifth of one: it is looked for to 9999."""
    months, days = rule.get("BYMONTH", range(1, 13)), rule.get("BYMONTHDAY", [1])
    has_day = any(
        0 < abs(_number(day)) <= monthrange(LEAP_YEAR, _number(month))[1] for month in months for day in days
    )
    is_daily = str(rule["FREQ"][0]).upper() == "DAILY"
    return not has_day or (is_daily and "BYSETPOS" in rule)


def _narrows(rule: Rule) -> bool:
    return any(name.upper().startswith("BY") for name in rule)


def _number(part: object) -> int:
    return int(str(part))


def _day(moment: object) -> date:
    if isinstance(moment, datetime):
        return moment.date()
    if isinstance(moment, date):
        return moment
    raise TypeError("no day")
