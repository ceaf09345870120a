"""Every consumable of a business as plain values, with its recipe."""

from collections import defaultdict
from decimal import Decimal

from django.db.models import Exists, OuterRef

from trimops.kernel.scope import Scope
from visits.domain.actions import BlockKind
from visits.domain.kit.kit_sheet import KitSheet, Occasion
from visits.domain.kit.plan_kit_list import KnownItem
from visits.domain.kit.stock_kinds import ConsumableKind, Unit, UsePer
from visits.models import Consumable, StockMovement, UseRule


def kit_sheets(scope: Scope) -> list[KnownItem]:
    """In their order (kind, name), also those out of use. Two queries."""
    lines = StockMovement.objects.within(scope).filter(consumable=OuterRef("pk"))
    items = Consumable.objects.within(scope).annotate(has_lines=Exists(lines))
    recipes = _recipes(scope)
    return [KnownItem(item.pk, sheet_of(item, recipes[item.pk]), item.has_lines) for item in items]


def recipe_of(item: Consumable) -> dict[Occasion, Decimal]:
    """The recipe of one consumable (none yet: empty). One query."""
    return {
        _occasion(rule): rule.quantity for rule in UseRule.objects.within(item.scope).filter(consumable=item)
    }


def sheet_of(item: Consumable, recipe: dict[Occasion, Decimal]) -> KitSheet:
    """One row as plain values."""
    return KitSheet(
        name=item.name,
        kind=ConsumableKind(item.kind),
        unit=Unit(item.unit),
        size=item.size,
        supplier=item.supplier,
        supplier_email=item.supplier_email,
        pack=item.pack,
        price=item.price,
        lead_days=item.lead_days,
        service_percent=item.service_percent,
        shelf_days=item.shelf_days,
        lowest_celsius=item.lowest_celsius,
        grams_per_ml=item.grams_per_ml,
        active_substance=item.active_substance,
        dilution=item.dilution,
        contact_minutes=item.contact_minutes,
        note=item.note,
        is_active=item.is_active,
        recipe=recipe,
    )


def _recipes(scope: Scope) -> defaultdict[int, dict[Occasion, Decimal]]:
    found: defaultdict[int, dict[Occasion, Decimal]] = defaultdict(dict)
    for rule in UseRule.objects.within(scope):
        found[rule.consumable_id][_occasion(rule)] = rule.quantity
    return found


def _occasion(rule: UseRule) -> Occasion:
    return UsePer(rule.per), BlockKind(rule.block_kind) if rule.block_kind else None
