"""Lines of the stock ledger of one consumable, and what they come to, as plain values.

Quantities are Decimal in the consumable's unit with at most two places; money is Decimal with two.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, datetime
from decimal import Decimal

from visits.domain.kit.stock_kinds import MovementKind


@dataclass(frozen=True, slots=True)
class Movement:
    """One line. `quantity` is signed. `source` names what a use was learned from ("trim 12", "visit 3 wash"), and what
    the two legs of a move have in common; "" for the rest. `cost` is of the whole quantity bought; None: not said.
    """

    id: int
    at: datetime
    place: int
    kind: MovementKind
    quantity: Decimal
    lot: int | None = None
    cost: Decimal | None = None
    source: str = ""


@dataclass(frozen=True, slots=True)
class Lot:
    """What was bought at one time."""

    id: int
    expires_on: date | None
    bought_on: date


@dataclass(frozen=True, slots=True)
class LotLeft:
    """What is left of a lot at a place; `lot` None: stock whose number nobody knows."""

    lot: int | None
    quantity: Decimal


@dataclass(frozen=True, slots=True)
class Shortfall:
    """At that moment so much more was taken from a place than lay there by the ledger. More below nought, each time.

    `lot` set: the place had enough, but not of the lot that was named; the rest came from its other lots.
    """

    place: int
    at: datetime
    quantity: Decimal
    lot: int | None = None


@dataclass(frozen=True, slots=True)
class Cost:
    """What a quantity cost. Not `is_known`: some of it was never bought, or without a price; `cost` leaves it out."""

    quantity: Decimal = Decimal(0)
    cost: Decimal = Decimal(0)
    is_known: bool = True

    def __add__(self, other: "Cost") -> "Cost":
        return Cost(self.quantity + other.quantity, self.cost + other.cost, self.is_known and other.is_known)


@dataclass(frozen=True)
class Standing:
    """Where the lines leave things. `balances` by place; `lots_left` by place, in the order in which they are to be
    used; `paid` for all that was bought; `value`: what is left, at what it cost.
    """

    balances: Mapping[int, Decimal]
    lots_left: Mapping[int, tuple[LotLeft, ...]]
    paid: Decimal
    value: Cost
    shortfalls: tuple[Shortfall, ...]
    lots_in_doubt: tuple[Shortfall, ...]


@dataclass(frozen=True)
class Reckoned(Standing):
    """With what went. To the penny: `paid` = the costs of all `uses` + `written_off` + `lost` + `value.cost`.

    `uses` by source; `lost`: what counts found missing, less what they found too much (then below nought).
    """

    uses: Mapping[str, Cost]
    written_off: Cost
    lost: Cost
