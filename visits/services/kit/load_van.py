"""What a van is loaded with the evening before leaves the store for the van."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from django.db import transaction

from visits.domain.kit.van_load import Portion, from_oldest
from visits.models import Consumable, StockLot, StockMovement, StockPlace, Van
from visits.selectors.kit.last_load import last_load
from visits.selectors.kit.lot_portions import lot_portions
from visits.services.kit.lock_stock import lock_stock
from visits.services.kit.move_stock import Way, move_stock
from visits.services.kit.stock_place import place_of_van, store_of
from visits.services.kit.stock_word import Amount, StockRefused, StockWord, booked_before


class LoadedMeanwhile(StockRefused):
    """Somebody moved stock into the van, or out of it, since the list was looked at."""

    code = "loaded_meanwhile"


@dataclass(frozen=True)
class WantedLoad:
    """So much of a consumable, in its unit; more than nought."""

    consumable: Consumable
    quantity: Decimal


@dataclass(frozen=True)
class LoadWord:
    """What is put in for the van's work on `day`. `seen`: `last_load` when the list was looked at; None: no list was.

    `is_really_there`: said where the ledger does not know of so much.
    """

    day: date
    loads: Sequence[WantedLoad]
    seen: int | None = None
    is_really_there: bool = False


@transaction.atomic
def load_van(*, van: Van, load: LoadWord, word: StockWord) -> list[StockMovement]:
    """From the store into the van: the lots with the oldest date, but none that is past it on the day.

    The same `uid` again gives what was booked then; of a list open in two tabs the second is LoadedMeanwhile.
    StockRefused as `move_stock` has it: MoreThanIsThere where the ledger does not know of so much that is good, unless
    it is really there.
    """
    lock_stock(scope=van.scope)
    if before := booked_before(van.scope, word):
        return before
    if load.seen is not None and last_load(van) != load.seen:
        raise LoadedMeanwhile(f"{van.name} was loaded or unloaded meanwhile. This is what is lacking now.")
    store = store_of(van.scope)
    moved = _from_lots(store, load)
    return move_stock(
        way=Way(store, place_of_van(van)), moved=moved, word=word, is_really_there=load.is_really_there
    )


def _from_lots(store: StockPlace, told: LoadWord) -> list[Amount]:
    portions, day = lot_portions(store.scope), told.day
    moved = []
    for load in told.loads:
        lots = portions.get((load.consumable.pk, store.pk), ())
        stale = [each for each in lots if each.is_past(day)]
        good = from_oldest([each for each in lots if not each.is_past(day)], load.quantity)
        rest = load.quantity - sum((each.quantity for each in good), Decimal(0))
        if rest > 0 and stale and not told.is_really_there:
            past = ", ".join(each.code or "without a number" for each in stale)
            raise StockRefused(
                f"{load.consumable.name}: what is left in the store is past its date on that day (lot {past}). "
                "Load less, or write it off."
            )
        moved += _amounts(load.consumable, good, rest)
    return moved


def _amounts(item: Consumable, portions: Sequence[Portion], rest: Decimal) -> list[Amount]:
    """One for each lot; what is of no known lot, and what the ledger does not know of, together."""
    named = [each for each in portions if each.lot is not None]
    rest += sum((each.quantity for each in portions if each.lot is None), Decimal(0))
    keys = [each.lot for each in named]
    lots = StockLot.objects.within(item.scope).in_bulk(keys)
    found = [Amount(item, each.quantity, lots[each.lot]) for each in named if each.lot is not None]
    return [*found, Amount(item, rest)] if rest > 0 else found
