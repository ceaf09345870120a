"""Vans and the shifts they go out on in a week, as the planner asks for them."""

from collections.abc import Iterator
from datetime import date, datetime, time, timedelta

from django.db.models import Prefetch

from trimops.accounts.models import Business
from trimops.kernel.clock import at_local
from trimops.kernel.scope import Scope
from visits.domain.planning.replan.close_shifts import closed
from visits.domain.planning_figures import PlanningFigures
from visits.models import DayOff, ShiftPattern, Van, VanOut


def vans_of(scope: Scope) -> list[Van]:
    """The vans that go out, with their shift patterns."""
    patterns = Prefetch("shift_patterns", queryset=ShiftPattern.objects.within(scope))
    return list(Van.objects.within(scope).filter(is_active=True).prefetch_related(patterns).order_by("id"))


def hours_of(figures: PlanningFigures) -> tuple[time, time]:
    """The hours within which anybody works."""
    return _clock(figures.earliest_hour), _clock(figures.latest_hour)


def _clock(hour: float) -> time:
    return time(int(hour), round(hour % 1 * 60))


def shifts_of(
    vans: list[Van], scope: Scope, monday: date, now: datetime, business: Business
) -> Iterator[dict[str, object]]:
    """Each van's shifts of the week that have not begun, days off and hours out of action left out."""
    sunday = monday + timedelta(days=6)
    off = set(DayOff.objects.within(scope).filter(day__range=(monday, sunday)).values_list("van_id", "day"))
    outs = _outs(scope, monday, business)
    for van in vans:
        for pattern in van.shift_patterns.all():
            day = monday + timedelta(days=pattern.weekday)
            if (van.pk, day) not in off and at_local(day, pattern.starts, business.zone) >= now:
                shift = _open_part(_shift(van, pattern, day, business), outs.get(van.pk, []))
                if shift is not None:
                    yield shift


def _outs(scope: Scope, monday: date, business: Business) -> dict[int, list[VanOut]]:
    """When vans are out of action in the week, by van."""
    first, last = (at_local(monday + timedelta(days=days), time(0), business.zone) for days in (0, 7))
    found: dict[int, list[VanOut]] = {}
    for row in VanOut.objects.within(scope).filter(since__lt=last, until__gt=first):
        found.setdefault(row.van_id, []).append(row)
    return found


def _open_part(shift: dict[str, object], outs: list[VanOut]) -> dict[str, object] | None:
    left: dict[str, object] | None = shift
    for out in outs:
        left = left and closed(left, out.since, out.until)
    return left


def _shift(van: Van, pattern: ShiftPattern, day: date, business: Business) -> dict[str, object]:
    def at(clock: time) -> str:
        return at_local(day, clock, business.zone).isoformat()

    shift: dict[str, object] = {
        "id": f"van-{van.pk}-{day}",
        "crew": f"van-{van.pk}",
        "base": f"van-{van.pk}",
        "start": at(pattern.starts),
        "end": at(pattern.ends),
        "max_work_minutes": pattern.max_work_minutes,
        "max_cows": pattern.max_cows,
        "cost_fixed": float(van.cost_per_day * 100),
        "cost_per_work_hour": float(van.cost_per_work_hour * 100),
        "cost_per_km": float(van.cost_per_km * 100),
    }
    if pattern.meal_minutes:
        shift["meal"] = {
            "minutes": pattern.meal_minutes,
            "earliest": at(pattern.meal_earliest),
            "latest": at(pattern.meal_latest),
        }
    return shift
