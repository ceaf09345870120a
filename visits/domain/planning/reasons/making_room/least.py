"""The least a limit must give way for a job to fit, over every place of the week."""

from collections.abc import Iterator
from dataclasses import dataclass

from visits.domain.planning.board import Board, Order, Week
from visits.domain.planning.problem import WeekProblem
from visits.domain.planning.reasons.making_room.limits import MOST_MINUTES, Limit
from visits.domain.planning.reasons.making_room.relaxed import extra_cost


@dataclass(frozen=True)
class Found:
    """By `minutes` the limit gives way; the job then fits in that shift and order of `problem` for `extra` money."""

    minutes: int
    shift: int
    order: Order
    problem: WeekProblem
    extra: float


def places(problem: WeekProblem, week: Week, job: int) -> Iterator[tuple[int, Order]]:
    """Every shift whose crew may do the job, with the job at every place of its order."""
    crews = problem.jobs[job].crews
    for shift, order in enumerate(week):
        if crews is None or problem.shifts[shift].crew in crews:
            for at in range(len(order) + 1):
                yield shift, (*order[:at], job, *order[at:])


def least(board: Board, week: Week, job: int, limit: Limit) -> Found | None:
    """The fewest whole minutes by which `limit` must give way; None where four hours are not enough.

    The cheaper place where two need the same. Exact: one minute less fits in no place.
    """
    best: Found | None = None
    for shift, order in places(board.problem, week, job):
        most = MOST_MINUTES if best is None else best.minutes
        found = _least_here(board, week, job, limit, (shift, order), most)
        if found and (best is None or (found.minutes, found.extra) < (best.minutes, best.extra)):
            best = found
    return best


def _least_here(
    board: Board, week: Week, job: int, limit: Limit, place: tuple[int, Order], most: int
) -> Found | None:
    """By halving between what is too little and what is enough."""
    enough, low = _tried(board, week, job, limit, place, most), 0
    while enough is not None and enough.minutes - low > 1:
        middle = (low + enough.minutes) // 2
        found = _tried(board, week, job, limit, place, middle)
        if found is None:
            low = middle
        else:
            enough = found
    return enough


def _tried(
    board: Board, week: Week, job: int, limit: Limit, place: tuple[int, Order], minutes: int
) -> Found | None:
    shift, order = place
    problem = limit.change(board.problem, shift, job, minutes)
    if problem is None:
        return None
    extra = extra_cost(board, week, problem, shift, order)
    return None if extra is None else Found(minutes, shift, order, problem, extra)
