"""An order timed in a problem with one limit changed."""

from dataclasses import replace
from itertools import pairwise

from visits.domain.planning.board import Board, Order, Week
from visits.domain.planning.lay_out import lay_out
from visits.domain.planning.openings import openings
from visits.domain.planning.plan import Stop
from visits.domain.planning.problem import Fixed, Job, Shift, WeekProblem
from visits.domain.planning.retime import Timing, best_timing
from visits.domain.planning.route import Route


def with_shift(problem: WeekProblem, at: int, shift: Shift) -> WeekProblem:
    """The problem with that shift instead."""
    return replace(problem, shifts=(*problem.shifts[:at], shift, *problem.shifts[at + 1 :]))


def with_job(problem: WeekProblem, at: int, job: Job) -> WeekProblem:
    """The problem with that job instead."""
    return replace(problem, jobs=(*problem.jobs[:at], job, *problem.jobs[at + 1 :]))


def relaxed_timing(
    board: Board, problem: WeekProblem, shift: int, order: Order, *, mind_hygiene: bool = True
) -> Timing | None:
    """The exact best timing of `order` in `problem`, which differs from the board's in shifts or jobs only."""
    jobs, limit = problem.jobs, problem.shifts[shift].max_cows
    if limit is not None and sum(jobs[job].cows for job in order) > limit:
        return None
    if mind_hygiene and any(jobs[a].hygiene > jobs[b].hygiene for a, b in pairwise(order)):
        return None
    base, times = problem.shifts[shift].place, problem.travel.times
    stops = [base, *(jobs[job].place for job in order), base]
    legs = tuple(times[a][b] for a, b in pairwise(stops))
    same_shift = problem.shifts[shift] is board.problem.shifts[shift]
    starts = tuple(
        board.openings[shift][job]
        if same_shift and jobs[job] is board.problem.jobs[job]
        else openings(problem, shift, jobs[job])
        for job in order
    )
    lengths = tuple(jobs[job].length for job in order)
    return best_timing(Route(problem.shifts[shift], legs, lengths, starts))


def extra_cost(
    board: Board, week: Week, problem: WeekProblem, shift: int, order: Order, *, mind_hygiene: bool = True
) -> float | None:
    """What `order` costs in `problem` above the shift as it stands; None where it cannot be done."""
    timing = relaxed_timing(board, problem, shift, order, mind_hygiene=mind_hygiene)
    if timing is None:
        return None
    return timing.cost + board.road_cost(shift, order) - board.cost(shift, week[shift])


def timed_alone(
    problem: WeekProblem, shift: int, order: Order, *, mind_hygiene: bool = True
) -> tuple[Stop, ...]:
    """The stops of that order in a board of this one shift: the proof that it can be done. ValueError if not."""
    jobs = tuple(
        replace(
            job, fixed=job.fixed and Fixed(0, job.fixed.start), hygiene=job.hygiene if mind_hygiene else 0
        )
        for job in (problem.jobs[at] for at in order)
    )
    board = Board(replace(problem, shifts=(problem.shifts[shift],), jobs=jobs))
    timing = board.timing(0, tuple(range(len(order))))
    if timing is None:
        raise ValueError("this order cannot be done")
    return lay_out(board, 0, tuple(range(len(order))), timing).stops
