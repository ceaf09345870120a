"""Which farms of a van's day are to be told that it comes later, by what is really known of the day."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

NOT_HEARD = timedelta(minutes=45)
"""A visit under way of which nothing was heard for longer: the phone is out of reach, and nobody knows how far it is.
Trimmers put down a cow every five to ten minutes; no source."""

TOO_LATE = timedelta(hours=3)
"""Later than this, a milking or the evening lies between: whether the visit still is to be, a person must ask. Our own
choice."""


@dataclass(frozen=True)
class StopSoFar:
    """One stop of the day, instants aware.

    `told` is the latest arrival that its farm was told, None where it was told no hour. `likely` is the arrival
    reckoned now; None once it has begun. `is_overdue`: it should have begun, and nobody said so. `heard` is the last
    sign from a visit under way, None for any other.
    """

    visit: int
    told: datetime | None
    likely: datetime | None
    is_overdue: bool = False
    heard: datetime | None = None


def late_stops(stops: Sequence[StopSoFar], late: timedelta, now: datetime) -> list[int]:
    """Visits whose farms are to be told, of stops in the order of driving: those that come more than `late` after the
    latest that they were told.

    Nothing is told where the day is not known: before the first visit is begun, behind a visit that should have begun
    (the phone may be out of reach while the cows are being done), and behind one not heard of for long. Nor to a farm
    that comes so late that a person must ring.
    """
    return [
        stop.visit
        for stop in _known(stops, now)
        if stop.told is not None and stop.likely is not None and late < stop.likely - stop.told <= TOO_LATE
    ]


def _known(stops: Sequence[StopSoFar], now: datetime) -> Iterator[StopSoFar]:
    begun = [stop for stop in stops if stop.likely is None]
    if not begun or any(stop.heard is not None and now - stop.heard > NOT_HEARD for stop in begun):
        return
    for stop in stops:
        if stop.likely is None:
            continue
        if stop.is_overdue:
            return
        yield stop
