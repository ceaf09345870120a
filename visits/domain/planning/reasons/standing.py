"""A week as it stands, seen from one job: where else it could go, everything else staying in its order."""

from dataclasses import dataclass
from functools import cached_property
from math import inf

from visits.domain.planning.board import Board, Order, Week
from visits.domain.planning.insertion import Spot
from visits.domain.planning.lay_out import lay_out
from visits.domain.planning.measures import instant, written
from visits.domain.planning.plan import Stop

PENNY_PART = 0.01
"""Costs closer than this are equal."""


@dataclass(frozen=True)
class Standing:
    """`job` in `week`; `shift` and `at` are its place."""

    board: Board
    week: Week
    job: int
    shift: int
    at: int

    @property
    def order(self) -> Order:
        """Its shift, itself included."""
        return self.week[self.shift]

    @property
    def rest(self) -> Order:
        """Its shift without it."""
        return (*self.order[: self.at], *self.order[self.at + 1 :])

    @cached_property
    def stop(self) -> Stop:
        """Its stop, timed."""
        return stop_of(self.board, self.shift, self.order, self.job)

    @cached_property
    def saved(self) -> float:
        """What its shift costs less without it; minus infinity where the others cannot be done without it."""
        return self.board.cost(self.shift, self.order) - self.board.cost(self.shift, self.rest)

    @cached_property
    def elsewhere(self) -> Spot | None:
        """The cheapest spot in another shift."""
        return cheapest_elsewhere(self.board, self.week, self.shift, self.job)

    @cached_property
    def beside(self) -> Spot | None:
        """The cheapest other place in its own shift; `extra` is then against the shift without it."""
        here = [self._at(self.shift, self.rest, at) for at in range(len(self.order)) if at != self.at]
        return min((spot for spot in here if spot.extra < inf), default=None)

    def _at(self, shift: int, order: Order, at: int) -> Spot:
        longer = (*order[:at], self.job, *order[at:])
        return Spot(self.board.cost(shift, longer) - self.board.cost(shift, order), shift, longer)


def standings(board: Board, week: Week) -> list[Standing]:
    """Every planned job of the week in its place."""
    return [
        Standing(board, week, job, shift, at)
        for shift, order in enumerate(week)
        for at, job in enumerate(order)
        if board.cost(shift, order) < inf
    ]


def cheapest_elsewhere(board: Board, week: Week, closed: int, job: int, limit: float = inf) -> Spot | None:
    """The cheapest spot outside the shift `closed` for less than `limit`; what a quick look rules out is not timed."""
    best: Spot | None = None
    for shift in board.homes[job]:
        order = week[shift]
        for at in range(len(order) + 1) if shift != closed else ():
            longer, old = (*order[:at], job, *order[at:]), board.cost(shift, order)
            if (shift, longer) not in board.known and board.floor(shift, longer) - old >= limit:
                continue
            if (extra := board.cost(shift, longer) - old) < limit:
                limit, best = extra, Spot(extra, shift, longer)
    return best


def stop_of(board: Board, shift: int, order: Order, job: int) -> Stop:
    """The stop of `job` in that order, by the exact timing; the order must be one that can be done."""
    timing = board.timing(shift, order)
    if timing is None:
        raise ValueError("this order cannot be done")
    return lay_out(board, shift, order, timing).stops[order.index(job)]


def moment_of(board: Board, ticks: int) -> str:
    """An instant as figures hold it."""
    return written(ticks, board.problem.zone)


def day_of(board: Board, ticks: int) -> str:
    """The local day of an instant as figures hold it."""
    return instant(ticks, board.problem.zone).date().isoformat()
