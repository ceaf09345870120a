"""What a subscribed calendar shows of the plan."""

from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Literal

EventStatus = Literal["TENTATIVE", "CONFIRMED", "CANCELLED"]


@dataclass(frozen=True)
class CalendarVisit:
    """One visit, or a stretch in which a van stays in. Instants are aware.

    `uid` never changes and is never used again; `sequence` goes up by one when time, place or state changes;
    `last_modified` is the visit's own last change, never "now". A visit called off stays, CANCELLED, for some weeks.
    `all_day`: shown on every day from the day of `start` to the day in which `end` lies (midnight: the day before).
    `lat`, `lon` in degrees, both or neither. `rings`: whether an alarm makes sense (the work is still to come).
    """

    uid: str
    sequence: int
    last_modified: datetime
    start: datetime
    end: datetime
    summary: str
    location: str = ""
    lat: float | None = None
    lon: float | None = None
    description: str = ""
    status: EventStatus = "CONFIRMED"
    url: str = ""
    all_day: bool = False
    rings: bool = False


@dataclass(frozen=True)
class CalendarFeed:
    """A whole feed. `uid` is the calendar's own and stable; `zone` an IANA name ("Europe/London").

    `alarm`: how long before a visit that rings the calendar shows an alarm; None: never.
    """

    uid: str
    name: str
    zone: str
    visits: tuple[CalendarVisit, ...]
    description: str = ""
    refresh: timedelta = timedelta(hours=1)
    alarm: timedelta | None = None
