"""Which lots lie where, the one to use first at the top."""

from dataclasses import dataclass
from decimal import Decimal

from trimops.kernel.scope import Scope
from visits.models import Consumable, StockLot, StockMovement
from visits.selectors.kit.reckoned_items import reckoned_items


@dataclass(frozen=True)
class LotAt:
    """So much of a lot lies at a place (its key). `lot` None: nobody knows its number, nor its date."""

    place: int
    lot: StockLot | None
    quantity: Decimal


LotsAt = tuple[LotAt, ...]


def lots_left(scope: Scope, consumable: Consumable) -> LotsAt:
    """Of one consumable: by place, and there in the order of use. Five queries, one more where much is new."""
    return lots_of(scope, [consumable.pk])[consumable.pk]


def all_lots_left(scope: Scope) -> dict[int, LotsAt]:
    """By consumable that was ever in the ledger, as `lots_left` has it. Six queries or seven."""
    rows = StockMovement.objects.within(scope).order_by().values_list("consumable_id", flat=True)
    return lots_of(scope, list(rows.distinct()))


def lots_of(scope: Scope, items: list[int]) -> dict[int, LotsAt]:
    """Of these consumables. Five queries or six."""
    found = {item: reckoned.lots_left for item, reckoned in reckoned_items(scope, items).items()}
    wanted = {left.lot for places in found.values() for lots in places.values() for left in lots}
    rows = StockLot.objects.within(scope).in_bulk(wanted - {None})
    return {
        item: tuple(
            LotAt(place, rows[left.lot] if left.lot else None, left.quantity)
            for place, lots in places.items()
            for left in lots
        )
        for item, places in found.items()
    }
