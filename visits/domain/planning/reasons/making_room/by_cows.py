"""By how many cows a shift's limit would have to give way."""

from collections.abc import Iterator
from dataclasses import replace

from visits.domain.planning.board import Board, Order, Week
from visits.domain.planning.problem import WeekProblem
from visits.domain.planning.reasons.making_room.least import places
from visits.domain.planning.reasons.making_room.placed import placed
from visits.domain.planning.reasons.making_room.relaxed import extra_cost, with_shift
from visits.domain.planning.reasons.reason import Reason


def cows_that_make_room(board: Board, week: Week, job: int) -> Iterator[Reason]:
    """The fewest cows over every place; the cheapest place for those."""
    best: tuple[int, float, int, Order] | None = None
    for shift, order in places(board.problem, week, job):
        more = _too_many(board, shift, order)
        if more <= 0 or (best is not None and more > best[0]):
            continue
        extra = extra_cost(board, week, _with_cows(board, shift, more), shift, order)
        if extra is not None and (best is None or (more, extra) < best[:2]):
            best = (more, extra, shift, order)
    if best is None:
        return
    more, extra, shift, order = best
    problem = _with_cows(board, shift, more)
    figures = placed(board, problem, shift, order, job)
    figures |= {"cows": more, "cows_limit": problem.shifts[shift].max_cows, "money": round(extra, 2)}
    yield Reason("cows-limit", figures)


def _too_many(board: Board, shift: int, order: Order) -> int:
    limit = board.problem.shifts[shift].max_cows
    return 0 if limit is None else sum(board.problem.jobs[job].cows for job in order) - limit


def _with_cows(board: Board, shift: int, more: int) -> WeekProblem:
    day = board.problem.shifts[shift]
    return with_shift(board.problem, shift, replace(day, max_cows=(day.max_cows or 0) + more))
