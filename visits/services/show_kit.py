"""What was used on a visit beyond what its cows say, as lines of the stock ledger, which is only ever added to."""

from collections.abc import Sequence
from decimal import Decimal

from django.db.models import Sum

from visits.domain.crush_merge import merge
from visits.domain.crush_writing import WritingKind
from visits.domain.writing_content import KitContent
from visits.models import CrushWriting, MovementKind, StockMovement, Visit
from visits.selectors.placed_writings import placed_writings
from visits.services.shown_writing import ShownWriting


def show_kit(*, visit: Visit, shown: Sequence[ShownWriting]) -> None:
    """Bring the ledger to what the latest word per consumable says; two phones count the same drawer."""
    at = max(writing.at for writing in shown)
    wanted = _latest_words(visit)
    written = _written(visit)
    rows = [
        StockMovement(
            business_id=visit.business_id,
            consumable_id=item,
            van_id=visit.van_id,
            kind=MovementKind.USED,
            quantity=-wanted.get(item, Decimal(0)) - written.get(item, Decimal(0)),
            at=at,
            visit=visit,
        )
        for item in sorted({*wanted, *written})
    ]
    StockMovement.objects.bulk_create([row for row in rows if row.quantity])


def _latest_words(visit: Visit) -> dict[int, Decimal]:
    """For each consumable the extra that the greatest shown writing of any phone says."""
    placed = [w for w in placed_writings(visit.scope, visit) if w.group.startswith(f"{WritingKind.KIT} ")]
    standing = merge(placed)
    winners = {uid: place for uid, place in standing.items() if place.shows == uid}
    rows = CrushWriting.objects.within(visit.scope).filter(uid__in=winners, is_gone=False)
    said: dict[int, Decimal] = {}
    for row in sorted(rows, key=lambda row: (winners[row.uid].effective, row.uid)):
        content = ShownWriting(row, winners[row.uid].effective, winners[row.uid].begun, 1).content()
        if isinstance(content, KitContent):
            said[content.consumable] = content.extra
    return said


def _written(visit: Visit) -> dict[int, Decimal]:
    rows = StockMovement.objects.within(visit.scope).filter(visit=visit, trim__isnull=True).order_by()
    return dict(rows.values_list("consumable_id").annotate(Sum("quantity")))
