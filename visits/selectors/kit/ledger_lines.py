"""The lines of the stock ledger as plain values, by consumable."""

from collections import defaultdict
from collections.abc import Collection
from datetime import datetime
from decimal import Decimal
from uuid import UUID

from trimops.kernel.scope import Scope
from trimops.tenancy.querysets import TenantQuerySet
from visits.domain.kit.stock_kinds import MovementKind
from visits.domain.kit.stock_lines import Lot, Movement
from visits.models import StockLot, StockMovement

_COLUMNS = (
    "pk",
    "at",
    "place_id",
    "kind",
    "quantity",
    "lot_id",
    "cost",
    "use_of",
    "trim_id",
    "visit_id",
    "uid",
)
_Row = tuple[
    int, datetime, int, str, Decimal, int | None, Decimal | None, str, int | None, int | None, UUID | None
]


def movements_of(rows: TenantQuerySet[StockMovement]) -> dict[int, list[Movement]]:
    """By consumable, in no order; `rows` say which lines. One query."""
    found: defaultdict[int, list[Movement]] = defaultdict(list)
    for item, *row in rows.order_by().values_list("consumable_id", *_COLUMNS):
        found[item].append(_movement(tuple(row)))
    return found


def lots_of(scope: Scope, items: Collection[int]) -> dict[int, list[Lot]]:
    """All that was ever bought of these consumables. One query."""
    found: defaultdict[int, list[Lot]] = defaultdict(list)
    rows = StockLot.objects.within(scope).filter(consumable_id__in=items).order_by()
    for item, pk, expires_on, bought_on in rows.values_list("consumable_id", "pk", "expires_on", "bought_on"):
        found[item].append(Lot(pk, expires_on, bought_on))
    return found


def source_of(use_of: str, trim: int | None, visit: int | None) -> str:
    """What a use was learned from: "trim 12", "visit 3 wash"; of a farm that was erased "gone cow"."""
    if trim is not None:
        return f"trim {trim}"
    return f"visit {visit} {use_of}" if visit is not None else f"gone {use_of}"


_KINDS = {kind.value: kind for kind in MovementKind}


def _movement(row: _Row) -> Movement:
    pk, at, place, kind, quantity, lot, cost, use_of, trim, visit, uid = row
    source = source_of(use_of, trim, visit) if use_of else str(uid) if kind == MovementKind.MOVED else ""
    return Movement(pk, at, place, _KINDS[kind], quantity, lot, cost, source)
