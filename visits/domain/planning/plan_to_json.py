"""A week plan as its document (`trimops-week-plan/1`)."""

from visits.domain.planning.measures import kilometres, minutes, written
from visits.domain.planning.plan import PlannedShift, Stop, WeekPlan

FORMAT = "trimops-week-plan/1"


def plan_to_json(plan: WeekPlan) -> dict[str, object]:
    """Plain values ready for `json.dumps`; instants carry the offset of the problem's time zone."""
    cost = plan.cost
    return {
        "format": FORMAT,
        "engine": plan.engine,
        "seed": plan.seed,
        "seconds": round(plan.seconds, 2),
        "cost": {
            "total": _money(cost.total),
            "shifts": _money(cost.shifts),
            "lateness": _money(cost.lateness),
            "left_out": _money(cost.left_out),
        },
        "bound": None if plan.bound is None else _money(plan.bound),
        "shifts": [_shift(plan, shift) for shift in plan.shifts],
        "left_out": [{"job": out.job, "reason": out.reason, "detail": out.detail} for out in plan.left_out],
    }


def _money(value: float) -> int | float:
    """A figure of the minor unit to four places: enough to add up again, no noise."""
    short = round(value, 4)
    return int(short) if short == int(short) else short


def _shift(plan: WeekPlan, shift: PlannedShift) -> dict[str, object]:
    meal = shift.meal
    return {
        "id": shift.id,
        "leave": written(shift.leave, plan.zone),
        "return": written(shift.back, plan.zone),
        "work_minutes": minutes(shift.back - shift.leave),
        "km": kilometres(shift.metres),
        "cows": shift.cows,
        "meal": meal and {"start": written(meal.start, plan.zone), "end": written(meal.end, plan.zone)},
        "stops": [_stop(plan, stop) for stop in shift.stops],
    }


def _stop(plan: WeekPlan, stop: Stop) -> dict[str, object]:
    return {
        "job": stop.job,
        "arrive": written(stop.arrive, plan.zone),
        "start": written(stop.start, plan.zone),
        "finish": written(stop.finish, plan.zone),
        "travel_minutes": minutes(stop.travel),
        "km": kilometres(stop.metres),
        "days_late": stop.days_late,
    }
