"""When a van is not there: days off, hours out of action, and what a calendar of the trimmer's own says."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from enum import StrEnum

from trimops.accounts.models import Business
from trimops.kernel.clock import from_to
from trimops.kernel.scope import Scope
from visits.models import DayOff, OutsideBusy, VanOut

LEAST = timedelta(minutes=30)
"""Shorter entries of a calendar (a call, a note) keep nobody in."""


class AwayBy(StrEnum):
    DAY_OFF = "day_off"
    OUT = "out"
    OWN_CALENDAR = "own_calendar"


@dataclass(frozen=True)
class Absence:
    """One stretch, aware. `why`: in words, as somebody wrote it; may be empty. A day off is the whole day."""

    van: int
    van_name: str
    since: datetime
    until: datetime
    by: AwayBy
    why: str
    is_whole_days: bool

    @property
    def last(self) -> datetime:
        """A moment of its last day."""
        return self.until - timedelta(minutes=1)


def absences_between(business: Business, first: date, last: date) -> list[Absence]:
    """Those that touch the days from `first` to `last`, in their order, of all vans. Three queries."""
    scope = Scope(business.pk)
    begin, end = from_to(first, last, business.zone)
    found = [*_days_off(business, scope, first, last), *_outs(scope, begin, end), *_busy(scope, begin, end)]
    return sorted(found, key=lambda each: (each.since, each.until, each.van, each.by))


def own_appointments(business: Business, first: date, last: date) -> dict[int, list[Absence]]:
    """Those of own calendars alone, by van (its key). One query."""
    found: dict[int, list[Absence]] = {}
    for each in _busy(Scope(business.pk), *from_to(first, last, business.zone)):
        found.setdefault(each.van, []).append(each)
    return found


def _days_off(business: Business, scope: Scope, first: date, last: date) -> Iterator[Absence]:
    for row in DayOff.objects.within(scope).filter(day__range=(first, last)).select_related("van"):
        since, until = from_to(row.day, row.day, business.zone)
        yield Absence(row.van_id, row.van.name, since, until, AwayBy.DAY_OFF, row.reason, is_whole_days=True)


def _outs(scope: Scope, begin: datetime, end: datetime) -> Iterator[Absence]:
    for row in VanOut.objects.within(scope).filter(since__lt=end, until__gt=begin).select_related("van"):
        why = row.get_because_display()
        yield Absence(row.van_id, row.van.name, row.since, row.until, AwayBy.OUT, why, is_whole_days=False)


def _busy(scope: Scope, begin: datetime, end: datetime) -> Iterator[Absence]:
    rows = OutsideBusy.objects.within(scope).filter(starts__lt=end, ends__gt=begin)
    for row in rows.select_related("calendar__van"):
        if keeps_in(row):
            why = row.summary or row.calendar.name
            van = row.calendar.van
            yield Absence(van.pk, van.name, row.starts, row.ends, AwayBy.OWN_CALENDAR, why, row.is_all_day)


def keeps_in(row: OutsideBusy) -> bool:
    """Whether the entry, with its calendar at hand, keeps the van in."""
    return row.is_all_day or (not row.calendar.only_whole_days and row.ends - row.starts >= LEAST)
