"""What somebody says of the stock: when it was, who says it; and what is refused of it."""

from collections import defaultdict
from collections.abc import Collection, Iterable
from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal
from uuid import UUID

from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken
from trimops.kernel.scope import Scope
from visits.domain.kit.read_quantity import quantity_words
from visits.domain.kit.stock_doubts import moment_doubt, quantity_doubt
from visits.domain.kit.stock_kinds import Unit
from visits.models import Consumable, StockLot, StockMovement, StockPlace
from visits.selectors.kit.balances_at import balances_at


class StockRefused(RuleBroken):
    """It cannot be booked as it is; the message says what to mend."""

    code = "stock_refused"


class MoreThanIsThere(StockRefused):
    """More is taken than lies there by the ledger. It is booked when somebody says that it is really there."""

    code = "more_than_is_there"


@dataclass(frozen=True)
class StockWord:
    """`at`: when it happened (the past is fine); `noted_at`: now; `uid`: made by the form, so that it books once."""

    at: datetime
    noted_at: datetime
    by: User
    uid: UUID
    note: str = ""


@dataclass(frozen=True)
class Amount:
    """So much of a consumable, in its unit; of the named lot, or of those whose date is oldest."""

    consumable: Consumable
    quantity: Decimal
    lot: StockLot | None = None


def booked_before(scope: Scope, word: StockWord) -> list[StockMovement]:
    """What this form booked already. Ask it under `lock_stock`, where two clicks at once wait for each other."""
    return list(StockMovement.objects.within(scope).filter(uid=word.uid).order_by("pk"))


def refuse_moment(word: StockWord) -> None:
    """StockRefused for a moment ahead, or long ago."""
    if doubt := moment_doubt(word.at, word.noted_at):
        raise StockRefused(doubt)


def refuse_amounts(amounts: Collection[Amount], *, nought: bool) -> None:
    """StockRefused for no line, one that stands twice, a foreign lot, or amounts nobody can mean (all in one message).

    `nought`: whether 0 is a word of its own, as it is in a count.
    """
    if not amounts:
        raise StockRefused("Nothing is filled in.")
    named = [(amount.consumable.pk, amount.lot.pk if amount.lot else None) for amount in amounts]
    if len(set(named)) < len(named):
        raise StockRefused("One thing stands there twice: put it into one line.")
    doubts = []
    for amount in amounts:
        item, quantity = amount.consumable, amount.quantity
        doubt = quantity_doubt(item.name, quantity, Unit(item.unit))
        if amount.lot is not None and amount.lot.consumable_id != item.pk:
            doubt = f"{amount.lot} is no lot of {item.name}."
        if doubt is None and not quantity and not nought:
            doubt = f"{item.name}: say how much."
        if doubt:
            doubts.append(doubt)
    if doubts:
        raise StockRefused(" ".join(doubts))


def refuse_more_than_is_there(place: StockPlace, amounts: Iterable[Amount], word: StockWord) -> None:
    """MoreThanIsThere names what the ledger has there at that moment. Two queries."""
    items: dict[int, Consumable] = {}
    wanted: defaultdict[int, Decimal] = defaultdict(Decimal)
    for amount in amounts:
        items[amount.consumable.pk] = amount.consumable
        wanted[amount.consumable.pk] += amount.quantity
    found = balances_at(place.scope, {((item, place.pk), word.at) for item in items})
    there = {item: balance for ((item, _), _), balance in found.items()}
    short = [_there(items[pk], there[pk], wanted[pk]) for pk in items if wanted[pk] > there[pk]]
    if short:
        raise MoreThanIsThere(
            f"By the ledger, {place.name} then had {'; '.join(short)}. If it was really there, say so; else look at "
            f"the amount, or count {place.name} first."
        )


def _there(item: Consumable, there: Decimal, wanted: Decimal) -> str:
    unit = Unit(item.unit)
    has = quantity_words(there, unit) if there > 0 else "none"
    return f"{has} of {item.name}, not {quantity_words(wanted, unit)}"
