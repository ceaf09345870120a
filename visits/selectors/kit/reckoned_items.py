"""Where the ledger of a consumable stands: lots, value, shortfalls. The past is gone through once."""

from collections.abc import Collection, Mapping
from datetime import UTC, datetime, timedelta

from django.core.cache import caches
from django.db.models import Count, Max

from trimops.kernel.scope import Scope
from trimops.tenancy.querysets import TenantQuerySet
from visits.domain.kit.stock_fold import StockFold
from visits.domain.kit.stock_lines import Lot, Standing
from visits.models import StockMovement
from visits.selectors.kit.ledger_lines import lots_of, movements_of

KEPT_SECONDS = 60 * 24 * 3600
LAYOUT = 1
"""Of what is kept. Raise it when `StockFold`, or a rule it goes by, changes: a cache outlives its code."""
RECENT = timedelta(days=31)
Rows = TenantQuerySet[StockMovement]


def reckoned_items(scope: Scope, items: Collection[int]) -> dict[int, Standing]:
    """By consumable. Four queries; five where the past has to be gone through.

    What lines older than the month before the newest come to is kept. Lines are only ever added, so how many of them
    there are says which: one that comes late has that consumable gone through anew. (A farm that is erased takes its
    visits off some lines; that is counted too.) Newer lines are gone through each time.
    """
    rows = StockMovement.objects.within(scope).filter(consumable_id__in=items).order_by()
    newest = rows.aggregate(at=Max("at"))["at"]
    if newest is None:
        return {item: StockFold().standing() for item in items}
    cut = _month_of(newest - RECENT)
    lots = lots_of(scope, items)
    folds = _past(scope, rows.filter(at__lt=cut), cut, lots)
    recent = movements_of(rows.filter(at__gte=cut))
    found = {}
    for item in items:
        fold = folds.get(item) or StockFold()
        fold.add(recent.get(item, ()), lots.get(item, ()))
        found[item] = fold.standing()
    return found


def _past(scope: Scope, rows: Rows, cut: datetime, lots: Mapping[int, list[Lot]]) -> dict[int, StockFold]:
    """By consumable that has such lines, all of them gone through."""
    counted = rows.values_list("consumable_id").annotate(
        Count("pk"), Max("pk"), Max("noted_at"), Count("trim"), Count("visit")
    )
    keys = {item: _key(scope, item, cut, *state) for item, *state in counted}
    kept = caches["worked_out"]
    known: dict[str, StockFold] = kept.get_many(keys.values())
    missing = [item for item, key in keys.items() if key not in known]
    if missing:
        lines = movements_of(rows.filter(consumable_id__in=missing))
        made = {keys[item]: StockFold() for item in missing}
        for item in missing:
            made[keys[item]].add(lines[item], lots.get(item, ()))
        kept.set_many(made, KEPT_SECONDS)
        known |= made
    return {item: known[key] for item, key in keys.items()}


def _key(scope: Scope, item: int, cut: datetime, *state: object) -> str:
    """A word that no other state of these lines has; keys hold no blanks."""
    words = (scope.business_id, item, cut.date(), *state)
    return f"stock/{LAYOUT}/{'/'.join(str(word).replace(' ', 'T') for word in words)}"


def _month_of(at: datetime) -> datetime:
    return at.astimezone(UTC).replace(day=1, hour=0, minute=0, second=0, microsecond=0)
