"""A week in the middle of which it is planned again: what can still be decided, and what is promised."""

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from trimops.accounts.models import Business
from trimops.kernel.clock import at_local, local_day
from trimops.kernel.scope import Scope
from visits.domain.planning.replan.begun_day import VanDay, begun_visits, day_so_far
from visits.domain.planning.replan.broken_promises import broken_promises, parts, without_promises
from visits.domain.planning.replan.day_so_far import with_day_so_far
from visits.domain.planning.replan.drives import Drives
from visits.domain.planning.replan.plan_in_force import InForce
from visits.domain.visit_states import VisitState
from visits.models import Visit
from visits.selectors.diary_in_force import LIVE, as_day_visit, as_in_force, diary_of
from visits.selectors.plan_holds import visit_key
from visits.selectors.week_problem import week_problem

Document = dict[str, object]


@dataclass(frozen=True)
class LateWord:
    """Word from the yard: the visit will be done at `free`; whether the meal has been had."""

    visit: Visit
    free: datetime
    meal_had: bool = False


@dataclass(frozen=True)
class UnderWay:
    """`problem` is all that can still be decided; `in_force` what the diary says of it, `begun` of the rest of today.

    `missed` are visits of earlier days that were not done. `asks` are the confirmed visits (jobs) that cannot be kept.
    """

    problem: Document
    in_force: tuple[InForce, ...]
    begun: tuple[InForce, ...]
    missed: tuple[InForce, ...]
    asks: tuple[str, ...]


@dataclass(frozen=True)
class _Day:
    """Today, as far as it has come."""

    now: datetime
    today: date
    zone: ZoneInfo
    visits: Sequence[Visit]
    late: LateWord | None


def week_under_way(business: Business, monday: date, now: datetime, late: LateWord | None = None) -> UnderWay:
    """The week from `now` on, days begun included. Confirmed visits that can no longer be kept are set free."""
    zone = business.zone
    diary = diary_of(Scope(business.pk), monday, zone)
    day = _today(diary, zone, now, late)
    since = _since(monday, day)
    problem, begun = _built(business, monday, day)
    if broken := broken_promises(problem):
        released = [key for job in broken if (key := visit_key(job))]
        problem, begun = _built(business, monday, day, released)
    over = {entry.job for entry in begun} | _taken_as_done(problem, diary)
    live = [visit for visit in diary if visit.visit_state in LIVE and f"visit-{visit.pk}" not in over]
    in_force = tuple(as_in_force(visit, zone) for visit in live if _is_ahead(visit, since))
    missed = tuple(as_in_force(visit, zone) for visit in live if not _is_ahead(visit, since))
    confirmed = {f"visit-{v.pk}" for v in diary if v.visit_state is VisitState.CONFIRMED} - over
    loose = {str(job["id"]) for job in parts(problem, "jobs") if "fixed" not in job}
    asks = tuple(sorted(confirmed & loose))
    held = [job for job in broken if not visit_key(job)]
    return UnderWay(without_promises(problem, [*asks, *held]), in_force, tuple(begun), missed, asks)


def week_from_now(
    business: Business,
    monday: date,
    now: datetime,
    *,
    begun: Sequence[Visit] = (),
    released: Collection[int] = (),
    also: Sequence[Visit] | None = None,
) -> tuple[Document, list[InForce]]:
    """The problem alone with the visits that today's rounds begin with; promises are not looked into.

    `begun`, `released` and `also` as for `week_problem`.
    """
    zone = business.zone
    day = _today(diary_of(Scope(business.pk), monday, zone), zone, now, None)
    since, farms = _since(monday, day), [*day.visits, *begun]
    problem = week_problem(business, monday, since, begun=farms, released=released, also=also, at=now)
    return _with_today(problem, day)


def _today(diary: Sequence[Visit], zone: ZoneInfo, now: datetime, late: LateWord | None) -> _Day:
    today = local_day(now, zone)
    return _Day(now, today, zone, [v for v in diary if _day_of(v, zone) == today], late)


def _since(monday: date, day: _Day) -> datetime:
    return at_local(day.today, time(0), day.zone) if monday <= day.today else day.now


def _built(
    business: Business,
    monday: date,
    day: _Day,
    released: Collection[int] = (),
) -> tuple[Document, list[InForce]]:
    since = _since(monday, day)
    problem = week_problem(business, monday, since, begun=day.visits, released=released, at=day.now)
    return _with_today(problem, day)


def _is_ahead(visit: Visit, since: datetime) -> bool:
    return visit.planned_start is not None and visit.planned_start >= since


def _day_of(visit: Visit, zone: ZoneInfo) -> date | None:
    at = visit.started_at or visit.planned_start
    return local_day(at, zone) if at else None


def _taken_as_done(problem: Document, diary: Sequence[Visit]) -> set[str]:
    """Visits with an hour that are no job of the problem any more."""
    jobs = {job["id"] for job in parts(problem, "jobs")}
    return {f"visit-{visit.pk}" for visit in diary} - {str(job) for job in jobs}


def _with_today(problem: Document, day: _Day) -> tuple[Document, list[InForce]]:
    """The problem with today's shifts as far as they have come, and the visits that these begin with."""
    drives, begun = Drives(problem), []
    for shift in parts(problem, "shifts"):
        start = datetime.fromisoformat(str(shift["start"]))
        if local_day(start, day.zone) != day.today:
            continue
        van_day = _van_day(shift, day)
        visits = begun_visits(van_day, drives, day.now)
        if not visits:
            problem = _opened(problem, shift, day.now)
        elif visits[-1].finished and day.now >= datetime.fromisoformat(str(shift["end"])):
            problem = _without(problem, shift, [visit.job for visit in visits])
        else:
            so_far = day_so_far(van_day, visits, drives, day.now)
            problem = _without(problem, None, [visit.job for visit in visits])
            last = visits[-1]
            job = {"id": last.job, "site": last.site, "cows": last.cows}
            problem = with_day_so_far({**problem, "jobs": [job, *parts(problem, "jobs")]}, so_far)
            begun.append(InForce(last.job, van_day.shift, so_far.start))
    return problem, begun


def _van_day(shift: Mapping[str, object], day: _Day) -> VanDay:
    van = int(str(shift["crew"]).removeprefix("van-"))
    late = day.late if day.late and day.late.visit.van_id == van else None
    meal = shift.get("meal")
    gone = isinstance(meal, dict) and day.now >= datetime.fromisoformat(str(meal["latest"]))
    return VanDay(
        str(shift["id"]),
        str(shift["base"]),
        [as_day_visit(visit) for visit in day.visits if visit.van_id == van],
        (f"visit-{late.visit.pk}", late.free) if late else None,
        late.meal_had if late else gone,
    )


def _opened(problem: Document, shift: Mapping[str, object], now: datetime) -> Document:
    """The shift from the next whole minute on; gone where it is over by then."""
    start = max(datetime.fromisoformat(str(shift["start"])), _next_minute(now))
    if start >= datetime.fromisoformat(str(shift["end"])):
        return _without(problem, shift, [])
    later = {**shift, "start": start.isoformat()}
    return {**problem, "shifts": [later if s is shift else s for s in parts(problem, "shifts")]}


def _next_minute(now: datetime) -> datetime:
    whole = now.replace(second=0, microsecond=0)
    return whole if whole == now else whole + timedelta(minutes=1)


def _without(problem: Document, shift: Mapping[str, object] | None, jobs: Collection[str]) -> Document:
    shifts = [each for each in parts(problem, "shifts") if each is not shift]
    return {**problem, "shifts": shifts, "jobs": list(_others(problem, jobs))}


def _others(problem: Document, jobs: Collection[str]) -> Iterator[dict[str, object]]:
    return (job for job in parts(problem, "jobs") if job["id"] not in jobs)
