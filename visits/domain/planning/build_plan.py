"""The chosen orders as a full plan: exact times, costs, and reasons for what is left out."""

from math import floor

from visits.domain.planning.board import Board, Week
from visits.domain.planning.lay_out import lay_out
from visits.domain.planning.left_out import left_out
from visits.domain.planning.measures import PER_HOUR
from visits.domain.planning.plan import PlanCost, PlannedShift, WeekPlan

GRAIN = 10_000
"""Money in a plan is written to the ten-thousandth."""


def build_plan(
    board: Board,
    week: Week,
    *,
    engine: str,
    seed: int,
    seconds: float,
    proven: bool = False,
    bound: float | None = None,
) -> WeekPlan:
    """`proven` says that no cheaper week exists; the cost is then its own bound. Else `bound` is what no plan can
    undercut, where something is known; it is written rounded down."""
    problem = board.problem
    shifts: list[PlannedShift] = []
    shift_cost = lateness = 0.0
    for at, order in enumerate(week):
        timing = board.timing(at, order) if order else None
        if timing is None:
            continue
        shifts.append(lay_out(board, at, order, timing))
        work = (timing.back - timing.leave) / PER_HOUR * problem.shifts[at].cost_per_hour
        shift_cost += work + board.road_cost(at, order)
        lateness += timing.late
    planned = {job for order in week for job in order}
    out = [job for job in range(len(problem.jobs)) if job not in planned]
    cost = PlanCost(shift_cost, lateness, sum(problem.jobs[job].leave_out_cost or 0.0 for job in out))
    return WeekPlan(
        zone=problem.zone,
        engine=engine,
        seed=seed,
        seconds=seconds,
        cost=cost,
        shifts=tuple(shifts),
        left_out=tuple(left_out(board, week, job) for job in out),
        bound=cost.total if proven else None if bound is None else bound_below(bound, cost.total),
        notes=problem.notes,
    )


def bound_below(bound: float, cost: float) -> float:
    """A proven bound as it is written beside that cost: rounded down, or the cost itself where it reaches it."""
    return cost if bound >= cost - 1e-6 else floor(bound * GRAIN) / GRAIN
