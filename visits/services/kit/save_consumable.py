"""A consumable is put on the list with its recipe, or mended."""

from collections.abc import Sequence

from django.db import transaction

from trimops.kernel.errors import FieldRefused, RuleBroken
from visits.domain.kit.stock_kinds import Unit
from visits.domain.kit.typed_recipe import TypedLine, read_recipe_lines
from visits.domain.kit.use_rules import Recipe
from visits.models import Consumable, StockCount, StockMovement, SupplyLine, UseRule, WashDown


class RecipeRefused(RuleBroken):
    """The recipe cannot be kept as it is; the message lists what to mend."""

    code = "recipe_refused"


class UnitInUse(FieldRefused):
    """What was bought, used and counted so far would mean something else in another unit."""

    code = "unit_in_use"


class PackNotWhole(FieldRefused):
    """What is counted in pieces comes in whole packs."""

    code = "pack_not_whole"


@transaction.atomic
def save_consumable(*, consumable: Consumable, lines: Sequence[TypedLine]) -> Consumable:
    """Keep it and replace its recipe; ValidationError, RecipeRefused, UnitInUse or PackNotWhole say what to mend.

    A line may be typed in g where the stock is counted in ml, and the other way round: kept is what it comes to in
    the consumable's unit. What was booked already stays as it was booked. There is no deleting: what is no longer
    carried is taken out of use (`is_active`), and its ledger stays.
    """
    consumable.name = " ".join(consumable.name.split())
    if consumable.pk:
        _check_unit(consumable.locked(), consumable)
    consumable.full_clean()
    unit = Unit(consumable.unit)
    if unit.is_whole and consumable.pack % 1:
        raise PackNotWhole("pack", f"A pack of what is counted in {unit.label} holds a whole number of them.")
    recipe, faults = read_recipe_lines(lines, unit, consumable.grams_per_ml)
    if faults:
        raise RecipeRefused(" ".join(faults))
    consumable.save()
    _keep_recipe(consumable, recipe)
    return consumable


def _check_unit(before: Consumable, now: Consumable) -> None:
    if before.unit == now.unit:
        return
    scope = before.scope
    told = any(
        rows.filter(consumable=before).exists()
        for rows in (
            StockMovement.objects.within(scope),
            StockCount.objects.within(scope),
            SupplyLine.objects.within(scope),
            WashDown.objects.within(scope),
        )
    )
    if told:
        was = Unit(before.unit).label
        raise UnitInUse(
            "unit",
            f"{before.name} was bought, used or counted in {was}, and those lines stay. Take it out of use, put it on "
            "the list once more under another name with the new unit, write off what is left here and count it there.",
        )


def _keep_recipe(consumable: Consumable, recipe: Sequence[Recipe]) -> None:
    UseRule.objects.within(consumable.scope).filter(consumable=consumable).delete()
    for line in recipe:
        row = UseRule(
            business_id=consumable.business_id,
            consumable=consumable,
            per=line.per.value,
            block_kind=line.block_kind.value if line.block_kind else "",
            quantity=line.quantity,
        )
        row.full_clean()
        row.save()
