"""A count stays true: at its moment so much lay there, whatever is heard later of what was used before it."""

from collections import defaultdict
from collections.abc import Collection
from datetime import datetime
from decimal import Decimal

from django.db import transaction

from trimops.kernel.scope import Scope
from visits.domain.kit.count_gaps import count_gaps
from visits.domain.kit.stock_kinds import MovementKind
from visits.models import StockCount, StockMovement
from visits.selectors.kit.balances_at import ItemAt, balances_at
from visits.services.kit.lock_stock import lock_stock


@transaction.atomic
def settle_counts(
    *, scope: Scope, touched: Collection[ItemAt], since: datetime, noted_at: datetime
) -> list[StockMovement]:
    """Append what makes every count of `touched` at or after `since` true again; the lines appended.

    Whoever writes lines of the ledger calls it in the same transaction, after writing, with the earliest `at` that was
    written; what corrects a line is dated as that line. It locks the consumables until that transaction ends, so that
    of two who write at once the later sees the other's lines. A count speaks of all that is dated up to its moment,
    this included; of two counts at one moment the one noted later stands. Two queries where nobody has counted since.
    """
    if not touched:
        return []
    lock_stock(scope=scope)
    counts = _counts(scope, touched, since)
    if not counts:
        return []
    moments = [(item_at, count.at) for item_at, those in counts.items() for count in those]
    balances = balances_at(scope, moments)
    rows: list[StockMovement] = []
    for item_at, those in counts.items():
        gaps = count_gaps((count.counted, balances[item_at, count.at]) for count in those)
        rows += [_line(count, gap, noted_at) for count, gap in zip(those, gaps, strict=True) if gap]
    StockMovement.objects.bulk_create(rows)
    return rows


def _counts(scope: Scope, touched: Collection[ItemAt], since: datetime) -> dict[ItemAt, list[StockCount]]:
    """In the order of time, one a moment."""
    found: defaultdict[ItemAt, dict[datetime, StockCount]] = defaultdict(dict)
    rows = StockCount.objects.within(scope).filter(
        at__gte=since,
        consumable_id__in={item for item, _ in touched},
        place_id__in={place for _, place in touched},
    )
    for row in rows.order_by("at", "pk"):
        if (row.consumable_id, row.place_id) in touched:
            found[row.consumable_id, row.place_id][row.at] = row
    return {item_at: list(those.values()) for item_at, those in found.items()}


def _line(count: StockCount, gap: Decimal, noted_at: datetime) -> StockMovement:
    return StockMovement(
        business_id=count.business_id,
        consumable_id=count.consumable_id,
        place_id=count.place_id,
        kind=MovementKind.COUNTED,
        quantity=gap,
        at=count.at,
        count=count,
        by_id=count.by_id,
        noted_at=noted_at,
    )
