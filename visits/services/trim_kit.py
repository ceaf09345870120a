"""What a cow used up, as lines of the stock ledger: a block and what goes with it, a wrap, a dressing."""

from collections import Counter
from collections.abc import Sequence
from datetime import datetime
from decimal import Decimal

from visits.domain.actions import ActionKind
from visits.domain.crush_entry import FootEntry
from visits.models import Consumable, ConsumableKind, MovementKind, StockMovement, Trim


def use_kit(trim: Trim, feet: Sequence[FootEntry], at: datetime) -> None:
    """Write what was used since this trim's earlier version; the ledger is only ever added to."""
    wanted = _wanted(trim, feet)
    written: dict[int, Decimal] = {}
    for item_id, quantity in (
        StockMovement.objects.within(trim.scope).filter(trim=trim).values_list("consumable_id", "quantity")
    ):
        written[item_id] = written.get(item_id, Decimal(0)) + quantity
    rows = [
        StockMovement(
            business_id=trim.business_id,
            consumable_id=item_id,
            van_id=trim.visit.van_id,
            kind=MovementKind.USED,
            quantity=-wanted.get(item_id, Decimal(0)) - written.get(item_id, Decimal(0)),
            at=at,
            trim=trim,
        )
        for item_id in {*wanted, *written}
    ]
    StockMovement.objects.bulk_create([row for row in rows if row.quantity])


def _wanted(trim: Trim, feet: Sequence[FootEntry]) -> dict[int, Decimal]:
    actions = [action for foot in feet for action in foot.actions]
    blocks = Counter(action.block_kind.value for action in actions if action.block_kind)
    wraps = sum(action.kind is ActionKind.WRAP for action in actions)
    dressings = sum(action.kind is ActionKind.DRESSING for action in actions)
    used: dict[int, Decimal] = {}
    for item in Consumable.objects.within(trim.scope):
        quantity = Decimal(blocks[item.block_kind]) if item.block_kind else Decimal(0)
        quantity += item.used_per_block * sum(blocks.values())
        quantity += wraps if item.kind == ConsumableKind.WRAP else 0
        quantity += dressings if item.kind == ConsumableKind.DRESSING else 0
        if quantity:
            used[item.pk] = quantity
    return used
