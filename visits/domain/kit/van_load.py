"""What a van lacks for a day, and what is sensibly put into it."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from decimal import ROUND_CEILING, ROUND_FLOOR, Decimal

from visits.domain.kit.forecast.spread import Spread
from visits.domain.kit.stock_kinds import Unit

PIECE, POURED = Decimal(1), Decimal(50)
BOX_FROM = Decimal("0.5")


@dataclass(frozen=True)
class Portion:
    """So much of one lot at one place; `lot` is its key, None where nobody knows which lot it is."""

    lot: int | None
    code: str
    expires_on: date | None
    quantity: Decimal

    def is_past(self, day: date) -> bool:
        """Whether it is past its date on `day`: on its date it may still be used."""
        return self.expires_on is not None and self.expires_on < day


@dataclass(frozen=True)
class ItemInPlaces:
    """One consumable as the ledger has it in the van and in the store; lots oldest date first."""

    unit: Unit
    pack: Decimal
    van_balance: Decimal
    in_van: Sequence[Portion]
    in_store: Sequence[Portion]


@dataclass(frozen=True)
class Load:
    """`has`: in the van and good on the day. `load`: to be put in, lot by lot in `portions`. `missing`: what neither
    van nor store has. `stale`: in the van, past its date on the day.
    """

    wanted: Decimal
    has: Decimal
    load: Decimal
    portions: tuple[Portion, ...]
    missing: Decimal
    stale: tuple[Portion, ...]

    @property
    def carried(self) -> Decimal:
        """What the van has once it is loaded."""
        return self.has + self.load


def load_for(item: ItemInPlaces, wanted: Decimal, day: date) -> Load:
    """What to put into the van so that it has `wanted` of the item on `day`, from the store's oldest lots first.

    A ledger below nought is taken as an empty van.
    """
    stale = tuple(portion for portion in item.in_van if portion.is_past(day))
    past = sum((portion.quantity for portion in stale), Decimal(0))
    has = max(Decimal(0), item.van_balance - past)
    good = [portion for portion in item.in_store if not portion.is_past(day) and portion.quantity > 0]
    store = sum((portion.quantity for portion in good), Decimal(0))
    lacking = max(Decimal(0), wanted - has)
    load = handy_amount(lacking, store, item.unit, item.pack)
    return Load(wanted, has, load, from_oldest(good, load), max(Decimal(0), lacking - load), stale)


def handy_amount(lacking: Decimal, store: Decimal, unit: Unit, pack: Decimal) -> Decimal:
    """What a person puts in where `lacking` is wanted and the store has `store`: whole pieces, ml and g by fifties, a
    whole pack where it is half of one or more; all that is left where that is less. Common practice, no source.
    """
    if lacking <= 0 or store <= 0:
        return Decimal(0)
    step = PIECE if unit.is_whole else POURED
    if lacking >= pack * BOX_FROM:
        in_packs = _up_to(lacking, pack)
        if in_packs <= store:
            return in_packs
    amount = min(_up_to(lacking, step), store)
    # A piece that is half used stays where it is.
    return amount.to_integral_value(ROUND_FLOOR) if unit.is_whole and amount >= 1 else amount


def _up_to(amount: Decimal, step: Decimal) -> Decimal:
    return (amount / step).to_integral_value(ROUND_CEILING) * step


def from_oldest(portions: Sequence[Portion], amount: Decimal) -> tuple[Portion, ...]:
    """`amount` of them, the first ones first; less where they hold less."""
    taken = []
    for portion in portions:
        part = min(portion.quantity, amount)
        if part > 0:
            taken.append(Portion(portion.lot, portion.code, portion.expires_on, part))
            amount -= part
    return tuple(taken)


def sureness_of_each(together: float, items: int) -> float:
    """How sure each of `items` must be, so that with the chance `together` none of them runs short on the day.

    The items of a day run out together rather than against each other (many cows use more of all), so that the product
    of their chances is a lower bound (Esary, Proschan, Walkup 1967, association; from memory). The same for each.
    """
    return math.pow(together, 1 / max(1, items))


def wanted_of(use: Spread, unit: Unit, sure: float) -> Decimal:
    """What the day's use does not exceed with that chance, in whole pieces where it comes in pieces."""
    amount = use.quantile(sure)
    return amount.to_integral_value(ROUND_CEILING) if unit.is_whole else amount


def chance_of_all(carried: Sequence[tuple[Spread, Decimal]]) -> float:
    """The chance that none of these uses exceeds what is carried of it; a lower bound, as `sureness_of_each` has it."""
    found = 1.0
    for use, amount in carried:
        found *= 1 - use.chance_above(amount)
    return found
