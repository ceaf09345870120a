"""The week as it stands, put as a problem for the planner (format trimops-week-problem/1)."""

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from zoneinfo import ZoneInfo

from farms.domain.working_windows import MilkingTime, Window
from farms.models import Farm
from farms.selectors.farm_windows import milkings_by_farm, windows_of
from trimops.accounts.models import Business
from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope
from visits.domain.planning.moves.hold_jobs import hold_jobs
from visits.domain.planning_figures import PlanningFigures
from visits.domain.visit_states import VisitReason, VisitState
from visits.models import Van, Visit
from visits.selectors.business_figures import figures_of
from visits.selectors.held_hours import held_in_week, held_jobs
from visits.selectors.plan_holds import lock_holds
from visits.selectors.week_shifts import hours_of, shifts_of, vans_of
from visits.selectors.week_travel import places_of, week_travel

FORMAT = "trimops-week-problem/1"


@dataclass(frozen=True)
class _Week:
    """What every job of the week needs to know."""

    monday: date
    now: datetime
    zone: ZoneInfo
    figures: PlanningFigures
    milkings: dict[tuple[int, int], list[MilkingTime]]
    shifts: frozenset[str]
    released: Collection[int] = ()

    def days(self) -> list[date]:
        return [self.monday + timedelta(days=n) for n in range(7)]


def week_problem(
    business: Business,
    monday: date,
    now: datetime,
    *,
    begun: Sequence[Visit] = (),
    released: Collection[int] = (),
    also: Sequence[Visit] | None = None,
    at: datetime | None = None,
) -> dict[str, object]:
    """Everything wanted, planned or confirmed for the week that begins on `monday`, JSON-ready.

    Confirmed visits keep their van and hour, locked ones what their lock says. A visit at whose farm nobody can
    work on any day left of the week is not in the problem (`visits_without_hours` names them). Shifts that have
    begun are not planned again. Hours held for a farm are promised jobs, `held-` and their key. With `also`, the
    visits without an hour are these (they need no key) in place of the wanted ones. Where `now` is only where the
    planning begins, `at` is the instant by which hours are held.
    """
    scope = Scope(business.pk)
    vans = vans_of(scope)
    shifts = list(shifts_of(vans, scope, monday, now, business))
    week = _Week(
        monday,
        now,
        business.zone,
        figures_of(scope).planning,
        milkings_by_farm(scope),
        frozenset(str(shift["id"]) for shift in shifts),
        released,
    )
    asked = visits_to_plan(business, monday)
    if also is not None:
        asked = [*(visit for visit in asked if visit.planned_start), *also]
    jobs = [(visit, job) for visit in asked if (job := _job(visit, week)) is not None]
    kept = held_in_week(scope, monday, business.zone, at or now)
    farms = {visit.farm_id: visit.farm for visit in [*(visit for visit, _ in jobs), *begun]}
    farms |= {hour.farm_id: hour.farm for hour in kept}
    held = [visit for visit, _ in jobs if visit.pk not in released]
    hold_jobs([job for _, job in jobs], shifts, lock_holds(scope, held, week.zone))
    places: dict[str, object] = {
        "bases": [_base(van) for van in vans],
        "sites": [_site(farm) for farm in farms.values()],
    }
    return {
        "format": FORMAT,
        "timezone": business.timezone,
        **places,
        "travel": week_travel(scope, places_of(places), week.figures).as_travel(),
        "shifts": shifts,
        "jobs": [*(job for _, job in jobs), *held_jobs(kept, business.zone, week.shifts)],
    }


def visits_to_plan(business: Business, monday: date) -> list[Visit]:
    """Wanted by the end of the week, or with an hour in it; not those under way or done."""
    sunday = monday + timedelta(days=6)
    rows = Visit.objects.within(Scope(business.pk)).select_related("farm", "van").order_by("id")
    rows = rows.in_state(VisitState.WANTED, VisitState.PLANNED, VisitState.CONFIRMED).due_by(sunday)
    return [
        row for row in rows if row.planned_start is None or _in_week(row.planned_start, monday, business.zone)
    ]


def _in_week(start: datetime, monday: date, zone: ZoneInfo) -> bool:
    return monday <= local_day(start, zone) <= monday + timedelta(days=6)


def _base(van: Van) -> dict[str, object]:
    return {"id": f"van-{van.pk}", "lat": float(van.base_latitude), "lon": float(van.base_longitude)}


def _site(farm: Farm) -> dict[str, object]:
    return {
        "id": f"farm-{farm.pk}",
        "lat": float(farm.latitude),
        "lon": float(farm.longitude),
        "hygiene": farm.hygiene_level,
    }


def _job(visit: Visit, week: _Week) -> dict[str, object] | None:
    fixed = _fixed(visit, week)
    # The farm's other hours stand beside the promised one, so that it can be told what the promise costs.
    windows = [*([_fixed_window(visit, week)] if fixed else []), *_windows(visit, week)]
    if not windows:
        return None
    reason = VisitReason(visit.reason)
    job: dict[str, object] = {
        "id": f"visit-{visit.pk}",
        "site": f"farm-{visit.farm_id}",
        "minutes": visit.expected_minutes,
        "cows": visit.head_count,
        "windows": [{"start": a.isoformat(), "end": b.isoformat()} for a, b in windows],
        "due": visit.due_until.isoformat(),
        "late_cost_per_day": week.figures.late_cost(reason),
    }
    leave_out = week.figures.leave_out_cost(reason, visit.head_count)
    if fixed:
        job["fixed"] = fixed
    elif leave_out is not None:
        job["leave_out_cost"] = leave_out
    return job


def _fixed(visit: Visit, week: _Week) -> dict[str, str] | None:
    if visit.visit_state is not VisitState.CONFIRMED or visit.planned_start is None:
        return None
    if visit.pk in week.released:
        return None
    start = visit.planned_start.astimezone(week.zone)
    shift = f"van-{visit.van_id}-{start.date()}"
    return {"shift": shift, "start": start.isoformat()} if shift in week.shifts else None


def _fixed_window(visit: Visit, week: _Week) -> Window:
    start = (visit.planned_start or week.now).astimezone(week.zone)
    return start, start + timedelta(minutes=visit.expected_minutes)


def _windows(visit: Visit, week: _Week) -> Iterator[Window]:
    first = max(visit.due_from, local_day(week.now, week.zone))
    for day in week.days():
        if day < first:
            continue
        milkings = week.milkings.get((visit.farm_id, day.weekday()), [])
        for start, end in windows_of(visit.farm, day, week.zone, milkings, hours_of(week.figures)):
            if end - start >= timedelta(minutes=visit.expected_minutes):
                yield start, end
