"""The best week, proven where time allows; else the best found and what no plan undercuts."""

from dataclasses import replace
from typing import NamedTuple

from visits.domain.planning.board import Board, Week
from visits.domain.planning.exact.column_generation import Pool
from visits.domain.planning.exact.pricing import MOST_JOBS
from visits.domain.planning.exact.proof_search import ProofSearch
from visits.domain.planning.exact.time_left import ShouldStop, TimeLeft
from visits.domain.planning.exact.week_rows import document_cost, weight_left_by, weight_of

WHOLE = 1 - 1e-3
"""Weights are whole numbers: a gap below one is none."""


class Proof(NamedTuple):
    """`bound`: no plan costs less (as a plan document counts) that leaves out as few of the jobs that must be done as
    `week` does, or fewer. `closed`: no plan at all is better than `week`. `columns`: days looked at."""

    week: Week
    bound: float
    closed: bool
    columns: int


def prove_week(
    board: Board, start: Week, seconds: float, should_stop: ShouldStop | None = None, pool: Pool | None = None
) -> Proof:
    """`start` is a week that keeps every rule, the better the sooner done. Beyond `MOST_JOBS` jobs nothing is tried.

    Days that `board` has costed before, and those of `pool`, are used again: they save most of the first rounds.
    """
    time = TimeLeft(seconds, should_stop)
    if not board.problem.jobs or not board.problem.shifts:
        return Proof(start, document_cost(board, start), True, 0)
    if len(board.problem.jobs) > MOST_JOBS:
        return Proof(start, 0.0, False, 0)
    week, least = _least_weight(board, start, TimeLeft(seconds / 2, should_stop))
    search = ProofSearch(board, week, time, pool=pool)
    search.run()
    while search.weight_falls and not time.over:
        search = ProofSearch(board, search.week, time, pool=pool)
        search.run()
    cost = document_cost(board, search.week)
    closed = search.closed and weight_left_by(board, search.week) == least
    return Proof(search.week, cost if closed else min(search.bound, cost), closed, len(search.prices.days))


def _least_weight(board: Board, start: Week, time: TimeLeft) -> tuple[Week, int | None]:
    """A week that leaves out the least weight of jobs that must be done, if one is found, and that weight where it
    is proven. Quick where nothing is left out, or only jobs that no shift can take."""
    weight = weight_left_by(board, start)
    if weight == sum(weight_of(board, job) for job, homes in enumerate(board.homes) if not homes):
        return start, weight
    free = without_costs(board)
    search = ProofSearch(free, start, time, weight_price=1.0, grain=WHOLE)
    search.run()
    better = min(start, search.week, key=board.total)
    return better, weight_left_by(board, better) if search.closed else None


def without_costs(board: Board) -> Board:
    """The same rules; nothing costs but leaving out what must be done."""
    problem = board.problem
    shifts = [replace(each, cost_fixed=0.0, cost_per_hour=0.0, cost_per_km=0.0) for each in problem.shifts]
    jobs = [
        replace(job, late_cost_per_day=0.0, leave_out_cost=None if job.leave_out_cost is None else 0.0)
        for job in problem.jobs
    ]
    return Board(replace(problem, shifts=tuple(shifts), jobs=tuple(jobs)))
