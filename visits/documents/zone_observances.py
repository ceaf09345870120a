"""The parts of a VTIMEZONE as plain values: one yearly rule for each change of the clock, where the zone keeps one.

Some readers take only the first of several RDATEs and then show summer visits an hour off; so a yearly rule is written,
and where the zone keeps none over the years in question (or it lies outside a day), every change stands by itself.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from functools import cache
from zoneinfo import ZoneInfo

from visits.documents.zone_footer import YearlyChange, ZoneRule, zone_rule

_EARLIEST = 2000


@dataclass(frozen=True)
class Observance:
    """From `starts` (naive, by the clock in use until then) the offset is `offset_to`; repeated by `yearly`."""

    starts: datetime
    offset_from: timedelta
    offset_to: timedelta
    name: str
    is_summer: bool
    yearly: YearlyChange | None = None


@cache
def zone_observances(key: str, first_year: int, last_year: int) -> tuple[Observance, ...]:
    """What holds in the zone from the start of `first_year` to the end of `last_year`, and by rule ever after.

    A rule is told from the first year in which it held (not before 2000), so that the parts stay the same from week to
    week, and a reader that tries the zone on old dates does not take London for UTC.
    """
    zone, rule = ZoneInfo(key), zone_rule(key)
    changes = _changes(zone, min(first_year - 1, _EARLIEST), last_year + 1)
    for year in range(_EARLIEST, first_year):
        by_rule = _by_rule(rule, year) if rule else ()
        if by_rule and _agree(by_rule, [c for c in changes if c.starts.year >= year], year, last_year + 1):
            return by_rule
    return _changes(zone, first_year - 1, last_year + 1)


def _by_rule(rule: ZoneRule, year: int) -> tuple[Observance, ...]:
    begins, ends = rule.summer_begins, rule.summer_ends
    if begins is None or ends is None:
        return (Observance(datetime(year, 1, 1), rule.offset, rule.offset, rule.name, False),)  # noqa: DTZ001
    if not all(timedelta(0) <= change.at < timedelta(days=1) for change in (begins, ends)):
        return ()
    summer = Observance(
        _on(begins, year),
        rule.offset,
        rule.summer_offset,
        rule.summer_name,
        rule.summer_offset > rule.offset,
        begins,
    )
    winter = Observance(
        _on(ends, year), rule.summer_offset, rule.offset, rule.name, rule.summer_offset < rule.offset, ends
    )
    return summer, winter


def _on(change: YearlyChange, year: int) -> datetime:
    """The wall-clock moment of a yearly change."""
    first = datetime(year, change.month, 1)  # noqa: DTZ001 (the wall clock of a zone: naive by nature)
    day = first + timedelta(days=(change.weekday - 1 - first.weekday()) % 7 + 7 * (change.week - 1))
    while day.month != change.month:
        day -= timedelta(days=7)
    return day + change.at


def _agree(rules: Sequence[Observance], changes: Sequence[Observance], first: int, last: int) -> bool:
    """Whether the rules give just the changes that the zone really has in those years."""
    expected = {
        (_on(rule.yearly, year), rule.offset_from, rule.offset_to)
        for rule in rules
        if rule.yearly
        for year in range(first, last + 1)
    }
    real = {(c.starts, c.offset_from, c.offset_to) for c in changes if c.offset_from != c.offset_to}
    return expected == real


def _changes(zone: ZoneInfo, first_year: int, last_year: int) -> tuple[Observance, ...]:
    """What holds at the start of `first_year`, and every change until the end of `last_year`."""
    here, end = datetime(first_year, 1, 1, tzinfo=UTC), datetime(last_year + 1, 1, 1, tzinfo=UTC)
    found = [_observance(zone, here, _offset(zone, here))]
    while here < end:
        later = here + timedelta(days=1)
        if _offset(zone, later) != _offset(zone, here):
            moment = _moment(zone, here, later)
            found.append(_observance(zone, moment, _offset(zone, here)))
        here = later
    return tuple(found)


def _observance(zone: ZoneInfo, moment: datetime, before: timedelta) -> Observance:
    local = moment.astimezone(zone)
    starts = (moment + before).replace(tzinfo=None)
    return Observance(starts, before, _offset(zone, moment), local.tzname() or "", bool(local.dst()))


def _moment(zone: ZoneInfo, early: datetime, late: datetime) -> datetime:
    """The first second with the offset of `late`."""
    low, high = 0, int((late - early).total_seconds())
    while high - low > 1:
        middle = (low + high) // 2
        is_before = _offset(zone, early + timedelta(seconds=middle)) == _offset(zone, early)
        low, high = (middle, high) if is_before else (low, middle)
    return early + timedelta(seconds=high)


def _offset(zone: ZoneInfo, at: datetime) -> timedelta:
    return at.astimezone(zone).utcoffset() or timedelta(0)
