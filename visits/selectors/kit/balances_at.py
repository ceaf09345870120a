"""How much lay where at a moment, by the ledger of now."""

from collections import defaultdict
from collections.abc import Collection
from datetime import datetime
from decimal import Decimal

from django.db.models import Sum

from trimops.kernel.scope import Scope
from visits.domain.kit.hundredths import exact_sum
from visits.models import StockMovement

ItemAt = tuple[int, int]
"""Consumable and place, by their keys."""
Moment = tuple[ItemAt, datetime]


def balances_at(scope: Scope, moments: Collection[Moment]) -> dict[Moment, Decimal]:
    """For each the sum of what is dated up to that moment, this included; below nought where more was taken than came.

    Two queries: what there is now, and what came after the first of the moments.
    """
    if not moments:
        return {}
    items_at = {item_at for item_at, _ in moments}
    rows = StockMovement.objects.within(scope).filter(
        consumable_id__in={item for item, _ in items_at}, place_id__in={place for _, place in items_at}
    )
    now: defaultdict[ItemAt, Decimal] = defaultdict(Decimal)
    sums = rows.order_by().values_list("consumable_id", "place_id").annotate(Sum("quantity"))
    for item, place, total in sums:
        now[item, place] = exact_sum(total)
    later: defaultdict[ItemAt, list[tuple[datetime, Decimal]]] = defaultdict(list)
    after = rows.filter(at__gt=min(at for _, at in moments)).order_by()
    for item, place, at, quantity in after.values_list("consumable_id", "place_id", "at", "quantity"):
        later[item, place].append((at, quantity))
    return {
        (item_at, at): now[item_at] - sum((part for when, part in later[item_at] if when > at), Decimal(0))
        for item_at, at in moments
    }
