"""Whose hygiene stands in the way, and of nothing else."""

from collections.abc import Iterator
from math import inf

from visits.domain.planning.board import Board, Order, Week
from visits.domain.planning.reasons.making_room.least import places
from visits.domain.planning.reasons.making_room.placed import placed
from visits.domain.planning.reasons.making_room.relaxed import extra_cost
from visits.domain.planning.reasons.reason import Reason


def hygiene_that_makes_room(board: Board, week: Week, job: int) -> Iterator[Reason]:
    """The place that only hygiene closes, with the fewest herds in the way, then the cheapest."""
    best: tuple[int, float, int, Order] = (len(board.problem.jobs) + 1, inf, 0, ())
    for shift, order in places(board.problem, week, job):
        clashes = len(_in_the_way(board, order, job))
        if not clashes or clashes > best[0]:
            continue
        extra = extra_cost(board, week, board.problem, shift, order, mind_hygiene=False)
        if extra is not None:
            best = min(best, (clashes, extra, shift, order))
    clashes, extra, shift, order = best
    if not order:
        return
    figures = placed(board, board.problem, shift, order, job, mind_hygiene=False)
    other = _in_the_way(board, order, job)[-1]
    figures |= {
        "level": board.problem.jobs[job].hygiene,
        "other": board.problem.jobs[other].id,
        "other_level": board.problem.jobs[other].hygiene,
        "others": clashes,
        "money": round(extra, 2),
    }
    yield Reason("hygiene-order", figures)


def _in_the_way(board: Board, order: Order, job: int) -> list[int]:
    """The worse herds before it and the cleaner ones after it; the nearest before it last, where there is one."""
    jobs, at = board.problem.jobs, order.index(job)
    own = jobs[job].hygiene
    before = [each for each in order[:at] if jobs[each].hygiene > own]
    after = [each for each in order[at + 1 :] if jobs[each].hygiene < own]
    return [*reversed(after), *before]
