"""What a count found: what lay there against what the ledger had."""

from dataclasses import dataclass
from decimal import Decimal
from uuid import UUID

from django.db.models import Sum

from trimops.kernel.scope import Scope
from visits.domain.kit.hundredths import exact_sum
from visits.models import Consumable, StockCount


@dataclass(frozen=True)
class CountFound:
    """`missing` is what the ledger had too much; below nought: too little."""

    consumable: Consumable
    counted: Decimal
    missing: Decimal

    @property
    def had(self) -> Decimal:
        """By the ledger, before."""
        return self.counted + self.missing

    @property
    def more(self) -> Decimal:
        """What was found beyond that."""
        return -self.missing


def count_result(scope: Scope, place: int, uid: UUID) -> list[CountFound]:
    """Everything that one form counted at a place, what differs first. One query."""
    rows = StockCount.objects.within(scope).filter(place=place, uid=uid).select_related("consumable")
    counts = rows.annotate(written=Sum("movements__quantity"))
    found = [CountFound(row.consumable, row.counted, -exact_sum(row.written)) for row in counts]
    return sorted(found, key=lambda each: (each.missing == 0, each.consumable.kind, each.consumable.name))
