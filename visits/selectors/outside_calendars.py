"""The outside calendars of a van, and when they keep it in."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from urllib.parse import urlsplit

from django.db.models import Prefetch

from visits.models import OutsideBusy, OutsideCalendar, Van
from visits.selectors.van_absences import keeps_in

SHOWN = 12


@dataclass(frozen=True)
class BusyLine:
    """One stretch as the page shows it; `last` is the last day of whole days, both among them."""

    row: OutsideBusy

    @property
    def last(self) -> datetime:
        return self.row.ends - timedelta(minutes=1)


@dataclass(frozen=True)
class CalendarLine:
    """One calendar; `busy` are the next times that keep the van in, `more` how many are not shown."""

    calendar: OutsideCalendar
    busy: Sequence[BusyLine]
    more: int

    @property
    def place(self) -> str:
        """Whose machine it is on: the rest of an address is often a secret that reads the calendar."""
        return urlsplit(self.calendar.url).hostname or ""


def calendar_lines(van: Van, now: datetime) -> list[CalendarLine]:
    """By name, with what is still to come. Two queries."""
    ahead = OutsideBusy.objects.within(van.scope).filter(ends__gt=now)
    rows = OutsideCalendar.objects.within(van.scope).filter(van=van)
    return [_line(row) for row in rows.prefetch_related(Prefetch("busy", queryset=ahead))]


def _line(calendar: OutsideCalendar) -> CalendarLine:
    found = []
    for row in calendar.busy.all():
        row.calendar = calendar
        if keeps_in(row):
            found.append(BusyLine(row))
    return CalendarLine(calendar, found[:SHOWN], max(len(found) - SHOWN, 0))
