"""Lines of the ledger for uses, written straight into it."""

from datetime import datetime
from decimal import Decimal

from visits.domain.kit.stock_kinds import MovementKind, UseOf
from visits.models import Consumable, StockMovement, Trim, Visit
from visits.services.kit.stock_place import store_of


def used_by_trim(item: Consumable, trim: Trim, quantity: int, at: datetime) -> StockMovement:
    return _used(item, quantity, at, UseOf.COW, trim=trim)


def used_by_visit(item: Consumable, visit: Visit, quantity: int, at: datetime) -> StockMovement:
    return _used(item, quantity, at, UseOf.WASH, visit=visit)


def _used(item: Consumable, quantity: int, at: datetime, use_of: UseOf, **words: object) -> StockMovement:
    return StockMovement.objects.create(
        business=item.business,
        consumable=item,
        place=store_of(item.scope),
        kind=MovementKind.USED.value,
        quantity=Decimal(-quantity),
        at=at,
        noted_at=at,
        use_of=use_of.value,
        **words,
    )
