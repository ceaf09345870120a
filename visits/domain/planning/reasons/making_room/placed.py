"""Where a job would then stand, as figures that can be checked."""

from visits.domain.planning.board import Board, Order
from visits.domain.planning.problem import WeekProblem
from visits.domain.planning.reasons.making_room.relaxed import timed_alone
from visits.domain.planning.reasons.reason import Figure
from visits.domain.planning.reasons.standing import moment_of


def placed(
    board: Board, problem: WeekProblem, shift: int, order: Order, job: int, *, mind_hygiene: bool = True
) -> dict[str, Figure]:
    """Shift, start, finish and the job before it (None: it is the first), by the timing of `problem`.

    ValueError where the order cannot be done there after all.
    """
    stops = timed_alone(problem, shift, order, mind_hygiene=mind_hygiene)
    at = order.index(job)
    return {
        "shift": board.problem.shifts[shift].id,
        "start": moment_of(board, stops[at].start),
        "finish": moment_of(board, stops[at].finish),
        "behind": board.problem.jobs[order[at - 1]].id if at else None,
    }
