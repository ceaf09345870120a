"""A week's board on which every change to the plan in force has its price, exact in day, van and hour.

A told hour splits the starts of a visit into those well before it, those that keep it, and those after. Lateness
that never falls makes "start as early as you can" exact, and a start before the told hour would break that: so an
order is timed once for each choice of visits that come before their told hour, and the cheapest is kept. With more
than `MOST_EARLY` such visits in a day, only those choices are tried in which they follow one another.
"""

from collections.abc import Iterator, Mapping
from copy import copy
from dataclasses import dataclass, field, replace
from itertools import product

from visits.domain.planning.board import Board, Order
from visits.domain.planning.lay_out import lay_out
from visits.domain.planning.openings import Opening
from visits.domain.planning.retime import Timing, best_timing

MOST_EARLY = 4
Starts = tuple[tuple[Opening, ...], ...]


@dataclass(frozen=True, slots=True)
class ToldHour:
    """The hour a farm counts on and how far it may slip, deciseconds; what breaking it costs."""

    start: int
    slack: int
    price: float


@dataclass
class PricedBoard(Board):
    """`surcharge` prices other days and vans, `told` the hours, `dropped` (job -> money) leaving a visit out."""

    told: Mapping[int, ToldHour] = field(default_factory=dict)
    dropped: Mapping[int, float] = field(default_factory=dict)

    def _more_than_any_plan(self) -> float:
        extra = sum(each.price for each in self.told.values()) + sum(self.dropped.values())
        return super()._more_than_any_plan() + 2 * extra

    def out_cost(self, job: int) -> float:
        """Leaving out what was planned is a change too. What is fixed (promised, or begun) goes before all the rest."""
        if self.problem.jobs[job].fixed is not None:
            return self.missing_price * (len(self.problem.jobs) + 2)
        return super().out_cost(job) + self.dropped.get(job, 0.0)

    def timing(self, shift: int, order: Order) -> Timing | None:
        """The best timing with the price of its hours, or None. Surcharges and told prices count as lateness."""
        best = self._timed(shift, order)
        return best and best[0]

    def _timed(self, shift: int, order: Order) -> tuple[Timing, Starts] | None:
        if not self.allowed(shift, order):
            return None
        route, best = self.route(shift, order), None
        for starts in self._choices(shift, order):
            found = best_timing(replace(route, starts=starts)) if all(starts) else None
            if found and (best is None or found.cost < best[0].cost - 1e-9):
                best = found, starts
        return best

    def _choices(self, shift: int, order: Order) -> Iterator[Starts]:
        halves = [self._halves(shift, job) for job in order]
        both = [at for at, (early, rest) in enumerate(halves) if early and rest]
        for early_ones in _picks(both):
            yield tuple(
                early if at in early_ones or not rest else rest for at, (early, rest) in enumerate(halves)
            )

    def _halves(self, shift: int, job: int) -> tuple[tuple[Opening, ...], tuple[Opening, ...]]:
        """The openings before the told hour, and those from it on, each with its price."""
        openings, told = self.openings[shift][job], self.told.get(job)
        if told is None:
            return (), openings
        first, last = told.start - told.slack, told.start + told.slack
        early = [_cut(each, each.first, min(each.last, first - 1), told.price) for each in openings]
        kept = [_cut(each, max(each.first, first), min(each.last, last), 0.0) for each in openings]
        after = [_cut(each, max(each.first, last + 1), each.last, told.price) for each in openings]
        return _real(early), _real(sorted([*kept, *after]))

    def starts_of(self, shift: int, order: Order) -> list[int]:
        """When each job of the order starts by the best timing, deciseconds. ValueError where there is none."""
        best = self._timed(shift, order)
        if best is None:
            raise ValueError(f"{self.problem.shifts[shift].id}: this order cannot be done")
        narrow = copy(self)
        row = list(self.openings[shift])
        for job, starts in zip(order, best[1], strict=True):
            row[job] = starts
        narrow.openings = [*self.openings[:shift], row, *self.openings[shift + 1 :]]
        return [stop.start for stop in lay_out(narrow, shift, order, best[0]).stops]


def _picks(both: list[int]) -> Iterator[frozenset[int]]:
    """Which of the stops in `both` come early."""
    if len(both) <= MOST_EARLY:
        for bits in product((False, True), repeat=len(both)):
            yield frozenset(at for at, early in zip(both, bits, strict=True) if early)
        return
    yield frozenset()
    for first in range(len(both)):
        for last in range(first, len(both)):
            yield frozenset(both[first : last + 1])


def _cut(opening: Opening, first: int, last: int, price: float) -> Opening:
    return Opening(first, last, opening.late + price)


def _real(openings: list[Opening]) -> tuple[Opening, ...]:
    return tuple(each for each in openings if each.first <= each.last)
