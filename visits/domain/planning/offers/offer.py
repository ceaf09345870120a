"""What can be offered: a place in the week with the span of its starts, and what it adds."""

from dataclasses import dataclass

from visits.domain.planning.board import Order


@dataclass(frozen=True, slots=True)
class Place:
    """A shift (index), the position in its order, and the order with the job in it."""

    shift: int
    at: int
    order: Order


@dataclass(frozen=True, slots=True)
class Added:
    """What a change of the week adds: deciseconds of work, metres, money of the minor unit (work, kilometres,
    a van that would have stayed in), and `weight`, the same money with the price of lateness."""

    work: int
    metres: int
    money: float
    weight: float

    def plus(self, other: "Added") -> "Added":
        return Added(
            self.work + other.work,
            self.metres + other.metres,
            self.money + other.money,
            self.weight + other.weight,
        )


@dataclass(frozen=True, slots=True)
class Offer:
    """Any start from `first` to `last` (deciseconds) keeps every rule and every promised start at that place."""

    place: Place
    first: int
    last: int
    added: Added


def by_weight(offer: Offer) -> tuple[float, int, int]:
    """Least weight first, then the earliest."""
    return round(offer.added.weight, 6), offer.first, offer.place.shift


@dataclass(frozen=True, slots=True)
class Move:
    """An unconfirmed job that leaves its place for another one, which may be in the same shift."""

    job: int
    away_from: int
    to: Place


@dataclass(frozen=True, slots=True)
class MoveOffer:
    """An offer that holds if one other job moves. `offer.added` counts both; `offer.place.order` is the whole order
    of that shift, with the moved job in it where it stays in the shift."""

    offer: Offer
    move: Move
