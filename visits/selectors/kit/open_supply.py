"""What is on order and has not come yet."""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from django.db.models import F

from trimops.kernel.scope import Scope
from visits.models import SupplyLine


@dataclass(frozen=True)
class OnItsWay:
    """So much is still to come of an order (its key)."""

    order: int
    expected_on: date
    quantity: Decimal

    def is_late(self, today: date) -> bool:
        return self.expected_on < today


def open_supply(scope: Scope) -> dict[int, list[OnItsWay]]:
    """By consumable, the first to come at the top. One query."""
    lines = SupplyLine.objects.within(scope).filter(
        closed_at__isnull=True, order__called_off_at__isnull=True, arrived__lt=F("quantity")
    )
    return still_to_come(lines)


def still_to_come(lines: Iterable[SupplyLine]) -> dict[int, list[OnItsWay]]:
    """The same of lines that were read already."""
    found: defaultdict[int, list[OnItsWay]] = defaultdict(list)
    for line in sorted(lines, key=lambda line: (line.expected_on, line.pk)):
        left = line.quantity - line.arrived
        if left > 0:
            found[line.consumable_id].append(OnItsWay(line.order_id, line.expected_on, left))
    return found
