"""How far a van's loading had come."""

from django.db.models import Max

from visits.domain.kit.stock_kinds import MovementKind
from visits.models import StockMovement, Van


def last_load(van: Van) -> int:
    """The newest line of what was ever moved into the van or out of it, by its key; 0 for none. One query."""
    rows = StockMovement.objects.within(van.scope).filter(place__van=van, kind=MovementKind.MOVED)
    return rows.aggregate(last=Max("pk"))["last"] or 0
