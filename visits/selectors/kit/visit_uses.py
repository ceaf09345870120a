"""What a visit used up: what counted itself, and what was put right by hand beside it."""

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from django.db.models import Q

from trimops.kernel.scope import Scope
from visits.domain.kit.stock_kinds import UseOf
from visits.models import Consumable, StockMovement, Visit


@dataclass(frozen=True)
class VisitUse:
    """Of one consumable, in its unit; `by_hand` is below nought where the trimmer used fewer than was counted."""

    consumable: Consumable
    by_cows: Decimal
    once: Decimal
    mixed: Decimal
    by_hand: Decimal

    @property
    def counted(self) -> Decimal:
        return self.by_cows + self.once + self.mixed

    @property
    def used(self) -> Decimal:
        return self.counted + self.by_hand


def visit_uses(scope: Scope, visit: Visit) -> Sequence[VisitUse]:
    """Of each consumable of which the ledger says something for the visit, by kind and name. Two queries."""
    sums: defaultdict[tuple[int, str], Decimal] = defaultdict(Decimal)
    rows = StockMovement.objects.within(scope).filter(Q(visit=visit) | Q(trim__visit=visit), use_of__gt="")
    for item, source, quantity in rows.order_by().values_list("consumable_id", "use_of", "quantity"):
        sums[item, source] -= quantity
    told = {item for (item, _), quantity in sums.items() if quantity}
    return [
        VisitUse(
            item,
            by_cows=sums[item.pk, UseOf.COW],
            once=sums[item.pk, UseOf.VISIT],
            mixed=sums[item.pk, UseOf.WASH],
            by_hand=sums[item.pk, UseOf.BY_HAND],
        )
        for item in Consumable.objects.within(scope).filter(pk__in=told)
    ]
