"""Every place that one stop of a week could have, with what it would cost: exact, by re-timing both days.

A place is a shift and a position among its other stops. Figures are against the week as it stands: minutes at work
and metres of all shifts, and money (work hours, kilometres, fixed costs and lateness; what is reckoned for leaving
the stop out stands apart). Other stops keep their order; their hours may move within the rules.
"""

from collections.abc import Collection
from dataclasses import dataclass
from functools import cached_property

from visits.domain.planning.board import Board, Order, Week
from visits.domain.planning.lay_out import lay_out
from visits.domain.planning.moves.week_orders import place_of, with_stop, without
from visits.domain.planning.moves.why_not import Rule, WhyNot, why_not


@dataclass(frozen=True)
class Price:
    """What a week has more (or less) of: deciseconds at work, metres, money of the minor unit."""

    work: int
    metres: int
    money: float

    def __sub__(self, other: "Price") -> "Price":
        return Price(self.work - other.work, self.metres - other.metres, self.money - other.money)

    def __add__(self, other: "Price") -> "Price":
        return Price(self.work + other.work, self.metres + other.metres, self.money + other.money)


@dataclass(frozen=True)
class Place:
    """One place for the stop. `price` and the span (deciseconds since 1970) stand unless `why_not` says otherwise."""

    shift: int
    position: int
    price: Price | None = None
    start: int = 0
    finish: int = 0
    why_not: WhyNot | None = None


@dataclass(frozen=True)
class Moves:
    """`here` is where the stop is now (None: left out); `out` what the week saves without it, None where it must stay.

    `out_cost` is what leaving it out is reckoned at.
    """

    job: int
    here: tuple[int, int] | None
    places: tuple[Place, ...]
    out: Price | None
    out_cost: float

    @cached_property
    def possible(self) -> list[Place]:
        """Places elsewhere that keep every rule, cheapest first."""
        found = [p for p in self.places if p.price is not None and (p.shift, p.position) != self.here]
        return sorted(found, key=lambda p: (p.price.money if p.price else 0.0, p.shift, p.position))


def price_moves(board: Board, week: Week, job: int, closed: Collection[int] = ()) -> Moves:
    """All places for `job` in `week`. Shifts in `closed` (begun, or done) take no stop and give none up.

    ValueError where a shift of `week` cannot be done as it stands.
    """
    here = place_of(week, job)
    if here is not None and here[0] in closed:
        return Moves(job, here, (), None, 0.0)
    rest = without(week, job)
    left = _without_it(board, week, rest, here[0]) if here else None
    places = tuple(
        (
            Place(shift, position, why_not=WhyNot(Rule.LEFT_BEHIND))
            if here and here[0] != shift and left is None
            else _place(
                board, week, (job, shift, position), left if here and here[0] != shift else None, closed
            )
        )
        for shift in range(len(week))
        for position in range(len(rest[shift]) + 1)
    )
    must_stay = board.problem.jobs[job].leave_out_cost is None
    return Moves(
        job, here, places, None if must_stay else left, board.problem.jobs[job].leave_out_cost or 0.0
    )


def _without_it(board: Board, week: Week, rest: Week, shift: int) -> Price | None:
    """What the shift saves without the stop; None where a detour by the stop was the quicker road (a typed table
    of travel may say so) and the others do not fit without it."""
    if rest[shift] and board.timing(shift, rest[shift]) is None:
        return None
    return _of_shift(board, shift, rest[shift]) - _of_shift(board, shift, week[shift])


def _place(
    board: Board, week: Week, at: tuple[int, int, int], left: Price | None, closed: Collection[int]
) -> Place:
    job, shift, position = at
    if shift in closed:
        return Place(shift, position, why_not=WhyNot(Rule.BEGUN))
    order = with_stop(week, job, shift, position)[shift]
    timing = board.timing(shift, order)
    if timing is None:
        return Place(shift, position, why_not=why_not(board, shift, order))
    price = _of_shift(board, shift, order) - _of_shift(board, shift, week[shift])
    stop = lay_out(board, shift, order, timing).stops[position]
    return Place(shift, position, price + left if left else price, stop.start, stop.finish)


def _of_shift(board: Board, shift: int, order: Order) -> Price:
    """What the shift comes to with this order; nothing where it does not go out."""
    if not order:
        return Price(0, 0, 0.0)
    timing = board.timing(shift, order)
    if timing is None:
        raise ValueError(f"{board.problem.shifts[shift].id}: these visits do not fit in this order")
    return Price(timing.back - timing.leave, board.metres(shift, order), board.cost(shift, order))
