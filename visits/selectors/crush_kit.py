"""The consumables of a business and how much of each the van brought to a visit."""

from django.db.models import Count, Q, Sum

from trimops.kernel.scope import Scope
from visits.models import Consumable, MovementKind, StockMovement, Visit


def crush_kit(scope: Scope, visit: Visit) -> list[dict[str, object]]:
    """Each consumable, quantities as plain numbers in its unit. Two queries.

    `in_van` leaves out what this visit used, which the phone counts itself; None where the van's stock of it was
    never written down.
    """
    in_van = _in_van(scope, visit)
    return [
        {
            "id": item.pk,
            "name": item.name,
            "kind": item.kind,
            "unit": item.unit,
            "block_kind": item.block_kind,
            "used_per_block": float(item.used_per_block),
            "in_van": in_van.get(item.pk),
        }
        for item in Consumable.objects.within(scope)
    ]


def _in_van(scope: Scope, visit: Visit) -> dict[int, float]:
    """What was there before the visit, of what was ever put into the van or counted in it."""
    rows = StockMovement.objects.within(scope).filter(van=visit.van, van__isnull=False)
    sums = (
        rows.exclude(Q(visit=visit) | Q(trim__visit=visit))
        .values_list("consumable_id")
        .annotate(left=Sum("quantity"), put_in=Count("pk", filter=~Q(kind=MovementKind.USED)))
        .order_by()
    )
    return {item: float(left) for item, left, put_in in sums if put_in}
