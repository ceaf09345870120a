"""The consumables of a business and how much of each the van brought to a visit."""

from decimal import Decimal

from django.db.models import Count, Q, Sum

from trimops.kernel.scope import Scope
from visits.domain.kit.hundredths import exact_sum
from visits.domain.kit.kit_sheet import full_name
from visits.domain.kit.stock_kinds import MovementKind
from visits.domain.kit.use_rules import Recipe
from visits.models import Consumable, StockMovement, Visit
from visits.selectors.kit.recipes import recipes_of


def crush_kit(scope: Scope, visit: Visit) -> list[dict[str, object]]:
    """Each consumable in use, quantities as plain numbers in its unit; of a disinfectant what its label says. Three
    queries.

    `in_van` leaves out what this visit used, which the phone counts itself; None where the van's stock of it was
    never written down.
    """
    in_van = _in_van(scope, visit)
    rules = recipes_of(scope)
    return [
        {
            "id": item.pk,
            "name": full_name(item.name, item.size),
            "kind": item.kind,
            "unit": item.unit,
            "uses": [_use(rule) for rule in rules.get(item.pk, ())],
            "in_van": in_van.get(item.pk),
            "grams_per_ml": None if item.grams_per_ml is None else float(item.grams_per_ml),
            "active_substance": item.active_substance,
            "dilution": item.dilution,
            "contact_minutes": _plain(item.contact_minutes),
        }
        for item in Consumable.objects.within(scope).filter(is_active=True)
    ]


def _use(line: Recipe) -> dict[str, object]:
    kind = line.block_kind.value if line.block_kind else ""
    return {"per": line.per.value, "block_kind": kind, "quantity": float(line.quantity)}


def _plain(number: Decimal | None) -> str | None:
    """As it stands on a label: "10", "0.5"."""
    return None if number is None else f"{number.normalize():f}"


def _in_van(scope: Scope, visit: Visit) -> dict[int, float]:
    """What was there before the visit, of what was ever put into the van or counted in it."""
    if visit.van_id is None:
        return {}
    rows = StockMovement.objects.within(scope).filter(place__van_id=visit.van_id)
    sums = (
        rows.exclude(Q(visit=visit) | Q(trim__visit=visit))
        .values_list("consumable_id")
        .annotate(left=Sum("quantity"), put_in=Count("pk", filter=~Q(kind=MovementKind.USED)))
        .order_by()
    )
    return {item: float(exact_sum(left)) for item, left, put_in in sums if put_in}
