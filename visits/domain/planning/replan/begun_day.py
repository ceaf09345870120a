"""What has been done of a van's day so far, from the diary and the clock."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

from visits.domain.planning.replan.day_so_far import SoFar
from visits.domain.planning.replan.drives import Drives

MINUTE = timedelta(minutes=1)


@dataclass(frozen=True)
class DayVisit:
    """A visit of the van's day: ids of the problem, its hour in the diary, and what has become of it."""

    job: str
    site: str
    start: datetime
    minutes: int
    cows: int
    hygiene: int
    started: datetime | None = None
    finished: datetime | None = None


@dataclass(frozen=True)
class VanDay:
    """A shift of today with its base, its visits, and what was told of the one that runs late (job, when done)."""

    shift: str
    base: str
    visits: Sequence[DayVisit]
    late: tuple[str, datetime] | None = None
    meal_had: bool = False


def begun_visits(day: VanDay, drives: Drives, now: datetime) -> list[DayVisit]:
    """Those that are done, under way or on their way, in order of time.

    A visit whose drive should have begun by now counts as begun, whether or not anybody has put that down: so does
    each before it, and each before one that runs late.
    """
    order = sorted(day.visits, key=lambda visit: (visit.started or visit.start, visit.job))
    last = max((at for at, visit in enumerate(order) if visit.started or _is_late(day, visit)), default=-1)
    here = order[last].site if last >= 0 else day.base
    for at, visit in enumerate(order[last + 1 :], last + 1):
        if visit.start - drives.between(here, visit.site) > now:
            break
        here, last = visit.site, at
    return order[: last + 1]


def day_so_far(day: VanDay, begun: Sequence[DayVisit], drives: Drives, now: datetime) -> SoFar:
    """The day so far by the last of `begun` (at least one). Instants are whole minutes."""
    times = list(_times(day, begun))
    last, (start, free) = begun[-1], times[-1]
    done = begun[:-1]
    return SoFar(
        shift=day.shift,
        job=last.job,
        start=start,
        free=free if _is_late(day, last) else _up(max(free, now)),
        left=times[0][0] - drives.between(day.base, begun[0].site),
        cows_before=sum(visit.cows for visit in done),
        hygiene_before=max((visit.hygiene for visit in done), default=0),
        meal_had=day.meal_had,
    )


def _times(day: VanDay, begun: Sequence[DayVisit]) -> Iterator[tuple[datetime, datetime]]:
    """Start and end of each, as it was or as it looks. One that is late begins no sooner than the one before ends."""
    before: datetime | None = None
    for visit in begun:
        length = timedelta(minutes=visit.minutes)
        if day.late is not None and _is_late(day, visit):
            free = _up(day.late[1])
            looks = max(free - length, before) if before else free - length
            start = min(_down(visit.started or looks), free)
        else:
            start = _down(visit.started or visit.start)
            free = _up(visit.finished or start + length)
        yield start, free
        before = free


def _is_late(day: VanDay, visit: DayVisit) -> bool:
    return day.late is not None and day.late[0] == visit.job


def _down(moment: datetime) -> datetime:
    return moment.replace(second=0, microsecond=0)


def _up(moment: datetime) -> datetime:
    whole = _down(moment)
    return whole if whole == moment else whole + MINUTE
