"""What cows used up, as lines of the stock ledger: a block and what goes with it, a wrap, a dressing."""

from collections import Counter, defaultdict
from collections.abc import Sequence
from decimal import Decimal

from visits.domain.actions import ActionKind
from visits.domain.crush_entry import CowEntry
from visits.models import Consumable, ConsumableKind, MovementKind, StockMovement, Visit
from visits.services.stored_cow import StoredCow


def use_kit(visit: Visit, cows: Sequence[StoredCow]) -> None:
    """Write what was used since each trim's earlier version; the ledger is only ever added to."""
    kit = list(Consumable.objects.within(visit.scope))
    written = _written(visit, [cow.trim.pk for cow in cows])
    rows = []
    for cow in cows:
        wanted = _wanted(kit, cow.entry)
        before = written[cow.trim.pk]
        for item in sorted({*wanted, *before}):
            quantity = -wanted.get(item, Decimal(0)) - before[item]
            if quantity:
                rows.append(_movement(visit, cow, item, quantity))
    StockMovement.objects.bulk_create(rows)


def _written(visit: Visit, trims: Sequence[int]) -> defaultdict[int, defaultdict[int, Decimal]]:
    written: defaultdict[int, defaultdict[int, Decimal]] = defaultdict(lambda: defaultdict(Decimal))
    rows = StockMovement.objects.within(visit.scope).filter(trim_id__in=trims)
    for trim, item, quantity in rows.values_list("trim_id", "consumable_id", "quantity"):
        if trim is not None:
            written[trim][item] += quantity
    return written


def _movement(visit: Visit, cow: StoredCow, item: int, quantity: Decimal) -> StockMovement:
    return StockMovement(
        business_id=visit.business_id,
        consumable_id=item,
        van_id=visit.van_id,
        kind=MovementKind.USED,
        quantity=quantity,
        at=cow.trim.recorded_at,
        trim=cow.trim,
    )


def _wanted(kit: Sequence[Consumable], entry: CowEntry) -> dict[int, Decimal]:
    actions = [action for foot in entry.feet for action in foot.actions]
    blocks = Counter(action.block_kind.value for action in actions if action.block_kind)
    wraps = sum(action.kind is ActionKind.WRAP for action in actions)
    dressings = sum(action.kind is ActionKind.DRESSING for action in actions)
    used: dict[int, Decimal] = {}
    for item in kit:
        quantity = Decimal(blocks[item.block_kind]) if item.block_kind else Decimal(0)
        quantity += item.used_per_block * sum(blocks.values())
        quantity += wraps if item.kind == ConsumableKind.WRAP else 0
        quantity += dressings if item.kind == ConsumableKind.DRESSING else 0
        if quantity:
            used[item.pk] = quantity
    return used
