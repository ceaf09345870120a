"""Putting jobs into a week one by one, each where it costs least by exact timing."""

from collections.abc import Sequence
from math import inf
from random import Random
from typing import NamedTuple

from visits.domain.planning.board import Board, Order


class Spot(NamedTuple):
    """A place for a job: the extra cost, the shift and its new order."""

    extra: float
    shift: int
    order: Order


def insert_all(
    board: Board, week: Sequence[Order], waiting: Sequence[int], chance: Random | None = None
) -> list[Order]:
    """The week with each waiting job put in its cheapest spot, in turn, where that beats leaving it out.

    `chance` makes it pass over a spot now and then, so that repeated repairs differ.
    """
    filled = list(week)
    for job in waiting:
        spot = cheapest_spot(board, filled, job, chance)
        if spot is not None and spot.extra < board.out_cost(job):
            filled[spot.shift] = spot.order
    return filled


def cheapest_spot(board: Board, week: Sequence[Order], job: int, chance: Random | None = None) -> Spot | None:
    """The spot of least extra cost, or None where the job fits nowhere."""
    best: Spot | None = None
    for shift in board.homes[job]:
        order = week[shift]
        old = board.cost(shift, order)
        for at in range(len(order) + 1):
            if chance is not None and chance.random() < 0.02:
                continue
            longer = (*order[:at], job, *order[at:])
            limit = inf if best is None else best.extra
            if (shift, longer) not in board.known and board.floor(shift, longer) - old >= limit:
                continue
            extra = board.cost(shift, longer) - old
            if extra < limit:
                best = Spot(extra, shift, longer)
    return best


def by_regret(board: Board, week: Sequence[Order], waiting: set[int]) -> list[Order]:
    """The week with waiting jobs put in, each time the one that would lose most by waiting."""
    filled, left = list(week), set(waiting)
    while left:
        ranked = [(_regret(board, filled, job), -job) for job in left]
        (_, spot), job = max(ranked, key=lambda each: (each[0][0], each[1]))
        left.discard(-job)
        if spot is not None and spot.extra < board.out_cost(-job):
            filled[spot.shift] = spot.order
    return filled


def _regret(board: Board, week: Sequence[Order], job: int) -> tuple[float, Spot | None]:
    """How much is lost if the best shift is gone: against the next best, or against leaving out."""
    spots = []
    for shift in board.homes[job]:
        spot = _spot_in(board, week[shift], shift, job)
        if spot is not None:
            spots.append(spot)
    spots.sort()
    if not spots:
        return -1.0, None
    second = min(spots[1].extra if len(spots) > 1 else inf, board.out_cost(job))
    return second - spots[0].extra, spots[0]


def _spot_in(board: Board, order: Order, shift: int, job: int) -> Spot | None:
    old = board.cost(shift, order)
    spots = [(*order[:at], job, *order[at:]) for at in range(len(order) + 1)]
    best = min(spots, key=lambda longer: board.cost(shift, longer))
    extra = board.cost(shift, best) - old
    return None if extra == inf else Spot(extra, shift, best)
