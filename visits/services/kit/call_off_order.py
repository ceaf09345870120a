"""An order, or the rest of a line of it, will not come."""

from datetime import datetime

from django.db import transaction

from visits.models import SupplyLine, SupplyOrder
from visits.services.kit.place_order import OrderRefused


@transaction.atomic
def call_off_order(*, order: SupplyOrder, because: str, at: datetime) -> SupplyOrder:
    """Nothing more of it is expected; what came already stays. OrderRefused where all of it has come."""
    row = order.locked()
    if row.called_off_at is not None:
        return row
    lines = SupplyLine.objects.within(row.scope).filter(order=row, closed_at__isnull=True).order_by("pk")
    still_open = list(lines.locked())
    if not still_open:
        raise OrderRefused("Nothing of this order is still to come.")
    _close(still_open, at)
    row.called_off_at = at
    if because:
        row.note = f"{row.note} Called off: {because}".strip()[:300]
    row.full_clean()
    row.save()
    return row


@transaction.atomic
def expect_no_more(*, line: SupplyLine, at: datetime) -> SupplyLine:
    """The rest of the line will not come. A line that is closed stays as it is."""
    order = line.order.locked()
    row = line.locked()
    if row.closed_at is None:
        _close([row], at)
        # Of an order of which nothing came nor will come, the list should not say that it was delivered.
        lines = SupplyLine.objects.within(order.scope).filter(order=order)
        if not lines.filter(closed_at__isnull=True).exists() and not lines.filter(arrived__gt=0).exists():
            order.called_off_at = at
            order.save(update_fields=["called_off_at"])
    return row


def _close(lines: list[SupplyLine], at: datetime) -> None:
    for line in lines:
        line.closed_at = at
        line.save(update_fields=["closed_at"])
