"""The cost of a plan, recomputed part by part in exact fractions of the minor unit."""

from collections.abc import Iterator
from fractions import Fraction

from visits.domain.planning.audit.plan import Cost, Plan
from visits.domain.planning.audit.runs import Run
from visits.domain.planning.audit.tolerance import money, money_grain, same_money
from visits.domain.planning.audit.values import MINUTE
from visits.domain.planning.audit.week import Week

HOUR = 60 * MINUTE


def check_cost(week: Week, plan: Plan, runs: list[Run]) -> Iterator[str]:
    """The parts, the total and the bound. `runs`: every printed shift, all of them laid out."""
    due = _recompute(week, plan, runs)
    for part in ("shifts", "lateness", "left_out", "total"):
        told, real = getattr(plan.cost, part), getattr(due, part)
        if not same_money(told, real):
            yield f"cost.{part}: says {money(told)}, it comes to {money(real)}"
    if plan.bound is not None and plan.bound > due.total + money_grain(due.total):
        yield f"bound: {money(plan.bound)} is above the cost of this very plan, {money(due.total)}"


def run_cost(run: Run) -> Fraction:
    """What one used shift costs: fixed, work hours from leaving to returning, km."""
    hours, km = Fraction(run.back - run.leave, HOUR), Fraction(run.metres, 1000)
    return run.shift.cost_fixed + hours * run.shift.cost_per_hour + km * run.shift.cost_per_km


def lateness_cost(week: Week, run: Run) -> Fraction:
    """What the late jobs of one run cost."""
    return sum(
        (call.job.late_cost * week.days_late(call.job, call.start) for call in run.calls),
        start=Fraction(0),
    )


def _recompute(week: Week, plan: Plan, runs: list[Run]) -> Cost:
    shifts = sum((run_cost(run) for run in runs), start=Fraction(0))
    lateness = sum((lateness_cost(week, run) for run in runs), start=Fraction(0))
    jobs = [week.jobs[entry.job] for entry in plan.left_out if entry.job in week.jobs]
    left_out = sum((job.leave_out_cost or Fraction(0) for job in jobs), start=Fraction(0))
    return Cost(shifts + lateness + left_out, shifts, lateness, left_out)
