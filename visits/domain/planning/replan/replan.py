"""Plan again from the plan in force: keep promises, change as little as the price of change says, pass the audit.

The way, by what was measured (routing-facts 5): exact insertion; insertion that pushes one visit out; a short search
from that plan with a price on every moved visit; and at the end each change that is not worth its price is undone.
Up to seven visits the best answer is proven.
"""

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from random import Random
from time import thread_time

from visits.domain.planning.board import Week
from visits.domain.planning.exact_small import MOST_JOBS, best_week
from visits.domain.planning.plan import WeekPlan
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.repair_search import RepairSearch
from visits.domain.planning.replan.board_of_change import board_of_change, whole_surcharge
from visits.domain.planning.replan.keep_told import keep_told
from visits.domain.planning.replan.least_change import least_change
from visits.domain.planning.replan.plan_in_force import InForce, week_in_force
from visits.domain.planning.replan.price_of_change import PriceOfChange
from visits.domain.planning.replan.priced_board import PricedBoard
from visits.domain.planning.replan.settle import settle
from visits.domain.planning.search_clock import SearchClock
from visits.domain.planning.solve import solve
from visits.domain.planning.solve_limits import SolveLimits
from visits.domain.planning.stored_week import document_of_week
from visits.domain.planning.swift.machine import make_ready

ENGINE = "trimops-replan"
SEARCHED = 0.85
"""Share of the time to search in for the whole week; the rest polishes with the price of told hours exact."""
LAST_STEPS, PER_LEFT_OUT, LEAST_SEARCH = 0.2, 0.06, 0.5
"""Processor seconds kept for writing the plan and its audit: measured for 60 visits, and for the reason of each left
out; and the share of the time that is searched in all the same."""


@dataclass(frozen=True)
class Replanned:
    """`problem` is the one that was planned (told hours that are kept are windows of it), `plan` its audited plan.

    `least` and `total` are cost and price of change together: of the nearest drivable plan, and of this one.
    """

    problem: dict[str, object]
    plan: dict[str, object]
    least: float
    total: float


def replan(
    document: Mapping[str, object], in_force: Sequence[InForce], price: PriceOfChange, clock: SearchClock
) -> Replanned:
    """The new plan for `document`, a problem after what happened, whose fixed jobs can be kept (`broken_promises`).

    Raises ProblemFaults for a malformed problem, PlanBreaksRules where the audit finds a breach.
    """
    begun = thread_time()
    problem = read_problem(json.dumps(document))
    board = board_of_change(problem, in_force, price)
    before = week_in_force(problem, in_force)
    start = least_change(board, before)
    clock.tell(board.total(start), at_once=True)
    slowness = max(1.0, clock.gone / max(0.01, thread_time() - begun))
    week = settle(board, _searched(board, start, clock, slowness), before)
    planned = keep_told(document, board, week)
    text = json.dumps(planned)
    plan = document_of_week(text, PricedBoard(read_problem(text)), week, engine=ENGINE)
    plan["seconds"] = round(clock.gone, 2)
    return Replanned(planned, plan, board.total(start), board.total(week))


def _searched(board: PricedBoard, start: Week, clock: SearchClock, slowness: float) -> Week:
    """The best week found; `slowness` is how much longer than its work anything takes on this machine now."""
    if len(board.problem.jobs) <= MOST_JOBS:
        proven = best_week(board, lambda: clock.half_gone)
        if proven is not None:
            return min([start, proven], key=board.total)
    clock.wait_for(make_ready)
    left_out = len(board.problem.jobs) - sum(map(len, start))
    kept = slowness * (LAST_STEPS + PER_LEFT_OUT * left_out)
    ends = clock.limits.seconds - min(kept, clock.limits.seconds * (1 - LEAST_SEARCH))
    best = min([start, _whole_search(board, start, clock, ends * SEARCHED)], key=board.total)
    repair = RepairSearch(board, list(best), Random(clock.limits.seed))
    steps = (clock.limits.iterations or 0) // 10
    repair.run(clock.until(ends, steps, lambda: repair.best_cost))
    return tuple(repair.best)


def _whole_search(board: PricedBoard, start: Week, clock: SearchClock, ends: float) -> Week:
    seconds = max(0.05, ends - clock.gone)
    limits: SolveLimits = replace(clock.limits, seconds=seconds)
    plan = solve(
        board.problem,
        limits=limits,
        progress=clock.progress,
        should_stop=clock.should_stop,
        start=start,
        surcharge=whole_surcharge(board),
    )
    return _week_of(board, plan)


def _week_of(board: PricedBoard, plan: WeekPlan) -> Week:
    jobs = {job.id: at for at, job in enumerate(board.problem.jobs)}
    orders = {shift.id: tuple(jobs[stop.job] for stop in shift.stops) for shift in plan.shifts}
    return tuple(orders.get(shift.id, ()) for shift in board.problem.shifts)
