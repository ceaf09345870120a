"""Which one other visit would make room by moving to another place, or by being left out."""

from collections.abc import Iterator
from math import inf
from typing import NamedTuple

from visits.domain.planning.board import Board, Order, Week
from visits.domain.planning.insertion import Spot
from visits.domain.planning.reasons.making_room.placed import placed
from visits.domain.planning.reasons.reason import Figure, Reason
from visits.domain.planning.reasons.standing import cheapest_elsewhere, moment_of, stop_of


class Swap(NamedTuple):
    """`extra` money for the week, with `other` out of the shift and the job in it in this order."""

    extra: float
    other: int
    shift: int
    order: Order
    goes: Spot | None


class _Out(NamedTuple):
    """The job in `order` of the shift for `extra` more, with `other` taken out; `tries` are all such orders."""

    extra: float
    shift: int
    other: int
    order: Order
    tries: tuple[Order, ...]


def others_that_make_room(board: Board, week: Week, job: int) -> Iterator[Reason]:
    """The cheapest single move and the cheapest single letting go; promises stay, what must be done stays in."""
    move, go = cheapest_move(board, week, job), _cheapest_letting_go(board, week, job)
    if move is not None:
        yield Reason("move-one", swap_figures(board, job, move))
    if go is not None:
        yield Reason("let-one-go", swap_figures(board, job, go))


def _outs(board: Board, week: Week, job: int, closed: int | None) -> Iterator[_Out]:
    """Each other visit taken out of its place, where that lets the job in."""
    for shift in board.homes[job]:
        for other in week[shift] if shift != closed else ():
            if board.problem.jobs[other].fixed is not None:
                continue
            rest = tuple(each for each in week[shift] if each != other)
            tries = [(*rest[:at], job, *rest[at:]) for at in range(len(rest) + 1)]
            possible = tuple(each for each in tries if board.cost(shift, each) < inf)
            if possible:
                order = min(possible, key=lambda each: (board.cost(shift, each), each))
                yield _Out(
                    board.cost(shift, order) - board.cost(shift, week[shift]), shift, other, order, possible
                )


def _cheapest_letting_go(board: Board, week: Week, job: int) -> Swap | None:
    found = [
        Swap(out.extra + cost, out.other, out.shift, out.order, None)
        for out in _outs(board, week, job, None)
        if (cost := board.problem.jobs[out.other].leave_out_cost) is not None
    ]
    return min(found, default=None)


def cheapest_move(board: Board, week: Week, job: int, closed: int | None = None) -> Swap | None:
    """The cheapest way to put `job` into `week` by moving one other visit, anywhere; not into the shift `closed`."""
    best: Swap | None = None
    for out in sorted(_outs(board, week, job, closed)):
        limit = inf if best is None else best.extra
        goes = cheapest_elsewhere(board, week, out.shift, out.other, limit - out.extra)
        if goes is not None:
            limit = out.extra + goes.extra
            best = Swap(limit, out.other, out.shift, out.order, goes)
        best = _within(board, week, out, limit) or best
    return best


def _within(board: Board, week: Week, out: _Out, limit: float) -> Swap | None:
    """Both in the one shift: the cheapest order, where it costs less than `limit` more."""
    shift, old, best = out.shift, board.cost(out.shift, week[out.shift]), None
    for order in out.tries:
        for at in range(len(order) + 1):
            longer = (*order[:at], out.other, *order[at:])
            if (shift, longer) not in board.known and board.floor(shift, longer) - old >= limit:
                continue
            extra = board.cost(shift, longer) - old
            if extra < limit:
                spot = Spot(board.cost(shift, longer) - board.cost(shift, order), shift, longer)
                limit, best = extra, Swap(extra, out.other, shift, order, spot)
    return best


def swap_figures(board: Board, job: int, swap: Swap) -> dict[str, Figure]:
    """Where the job and the other visit would then stand, and the money."""
    figures = placed(board, board.problem, swap.shift, swap.order, job)
    figures |= {"other": board.problem.jobs[swap.other].id, "money": round(swap.extra, 2)}
    if swap.goes is None:
        return figures | {"leave_out": board.problem.jobs[job].leave_out_cost}
    if swap.goes.shift == swap.shift:
        figures |= placed(board, board.problem, swap.shift, swap.goes.order, job)
    goes = stop_of(board, swap.goes.shift, swap.goes.order, swap.other)
    return figures | {
        "other_shift": board.problem.shifts[swap.goes.shift].id,
        "other_start": moment_of(board, goes.start),
    }
