"""The nearest week to the plan in force that can still be driven: what fell out is put in, pushing out one at most.

What was measured on made-up weeks (routing-facts 5 and 8): hardly any urgent visit fits a full week as it stands,
nearly all fit when one other visit moves.
"""

from collections.abc import Iterator
from itertools import combinations
from math import inf
from typing import NamedTuple

from visits.domain.planning.board import Board, Order, Week
from visits.domain.planning.insertion import by_regret, cheapest_spot

MOST_TAKEN = 2
TRIED = 24
"""Ejections followed up for one visit: those that are cheapest before the one pushed out finds its place."""


class Ejection(NamedTuple):
    """A visit put in where another is pushed out: the extra cost so far, the shift, its new order, who is out."""

    extra: float
    shift: int
    order: Order
    out: int


def least_change(board: Board, week: Week) -> Week:
    """`week` mended: orders that can no longer be driven lose a visit, and all that wait are put in where it pays."""
    filled = [_drivable(board, week, shift, order) for shift, order in enumerate(week)]
    filled = by_regret(board, filled, set(_waiting(board, filled)))
    for job in sorted(_waiting(board, filled), key=lambda each: -board.out_cost(each)):
        filled = _with_one_pushed_out(board, filled, job)
    return tuple(filled)


def _waiting(board: Board, week: list[Order]) -> list[int]:
    planned = {job for order in week for job in order}
    return [job for job in range(len(board.problem.jobs)) if job not in planned]


def _drivable(board: Board, week: Week, shift: int, order: Order) -> Order:
    """The order without the fewest and cheapest visits that make it impossible; promised ones stay if they can."""
    if board.cost(shift, order) < inf:
        return order
    loose = [job for job in order if board.problem.jobs[job].fixed is None]
    for size in range(1, MOST_TAKEN + 1):
        rests = [(_cost_without(board, week, shift, order, gone), gone) for gone in combinations(loose, size)]
        cost, gone = min(rests, default=(inf, ()))
        if cost < inf:
            return tuple(job for job in order if job not in gone)
    return _one_by_one(board, shift, order)


def _cost_without(board: Board, week: Week, shift: int, order: Order, gone: tuple[int, ...]) -> float:
    """What the shift costs without those visits and they elsewhere (each on its own)."""
    cost = board.cost(shift, tuple(job for job in order if job not in gone))
    if cost == inf:
        return inf
    others = [() if at == shift or board.cost(at, each) == inf else each for at, each in enumerate(week)]
    for job in gone:
        spot = cheapest_spot(board, others, job)
        cost += board.out_cost(job) if spot is None else min(spot.extra, board.out_cost(job))
    return cost


def _one_by_one(board: Board, shift: int, order: Order) -> Order:
    """Promised visits first, then the others in their order, each where it is in the way of none before."""
    place = {job: at for at, job in enumerate(order)}
    kept: Order = ()
    for job in sorted(order, key=lambda each: (board.problem.jobs[each].fixed is None, place[each])):
        longer = tuple(sorted((*kept, job), key=place.__getitem__))
        if board.cost(shift, longer) < inf:
            kept = longer
    return kept


def _with_one_pushed_out(board: Board, week: list[Order], job: int) -> list[Order]:
    """The week with `job` in the place of another that goes elsewhere, if that beats leaving `job` out."""
    best, least = week, board.out_cost(job)
    for extra, shift, order, out in sorted(_ejections(board, week, job))[:TRIED]:
        if extra >= least:
            break
        pushed = [*week[:shift], order, *week[shift + 1 :]]
        spot = cheapest_spot(board, pushed, out)
        more = board.out_cost(out) if spot is None else min(spot.extra, board.out_cost(out))
        if extra + more < least:
            least = extra + more
            best = pushed
            if spot is not None and spot.extra <= board.out_cost(out):
                best = [*pushed[: spot.shift], spot.order, *pushed[spot.shift + 1 :]]
    return best


def _ejections(board: Board, week: list[Order], job: int) -> Iterator[Ejection]:
    for shift in board.homes[job]:
        order, old = week[shift], board.cost(shift, week[shift])
        for out in order:
            if board.problem.jobs[out].fixed is not None:
                continue
            rest = tuple(each for each in order if each != out)
            for at in range(len(rest) + 1):
                swapped = (*rest[:at], job, *rest[at:])
                extra = board.cost(shift, swapped) - old
                if extra < inf:
                    yield Ejection(extra, shift, swapped, out)
