"""The recipe of a consumable as a person types it: what it says in the consumable's unit, or what is to be mended."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from visits.domain.actions import BlockKind
from visits.domain.kit.booked_recipe import recipe_words
from visits.domain.kit.stock_kinds import Unit, UsePer
from visits.domain.kit.use_rules import Recipe
from visits.domain.kit.weight_and_volume import in_unit

MOST = Decimal("99999.99")
"""More than that of anything, with one cow or visit, is a slip."""


@dataclass(frozen=True)
class TypedLine:
    """So much with every `per` (of one kind of block, or of every kind: None), in `unit`; None: in the consumable's."""

    per: UsePer
    quantity: Decimal | None
    unit: Unit | None = None
    block_kind: BlockKind | None = None


def read_recipe_lines(
    lines: Sequence[TypedLine], counted: Unit, grams_per_ml: Decimal | None
) -> tuple[list[Recipe], list[str]]:
    """The recipe in the unit the consumable is `counted` in, and a sentence for each thing to be mended."""
    recipe, faults = [], _twice(lines)
    for line in lines:
        quantity, fault = _quantity(line, counted, grams_per_ml)
        if line.block_kind and line.per is not UsePer.BLOCK:
            fault = f"A kind of block goes with a block put on, not with a {line.per.label}."
        if fault:
            faults.append(fault)
        elif quantity:
            recipe.append(Recipe(line.per, quantity, line.block_kind))
    if any(line.per is not UsePer.VISIT for line in recipe) and not recipe_words(recipe):
        faults.append("That recipe has more lines than can be kept: leave some out.")
    return recipe, faults


def _quantity(line: TypedLine, counted: Unit, grams_per_ml: Decimal | None) -> tuple[Decimal | None, str]:
    occasion = _occasion(line)
    if line.quantity is None:
        return None, f"Say how much is used with every {occasion}."
    if line.quantity.is_nan() or not 0 < line.quantity <= MOST:
        return None, f"The amount with every {occasion} must be more than 0 and at most {MOST:,}."
    typed = line.unit or counted
    quantity = in_unit(line.quantity, typed, counted, grams_per_ml)
    if quantity is None:
        return None, _no_way(occasion, typed, counted)
    if not 0 < quantity <= MOST:
        return (
            None,
            f"{line.quantity.normalize():f} {typed.label} with every {occasion} is no amount in {counted.label}.",
        )
    return quantity, ""


def _no_way(occasion: str, typed: Unit, counted: Unit) -> str:
    if {typed, counted} == {Unit.ML, Unit.GRAM}:
        return (
            f"The use with every {occasion} is typed in {typed.label}, the stock is counted in {counted.label}: "
            "say how many grams a ml weighs, or type it in the unit it is counted in."
        )
    return (
        f"The use with every {occasion} cannot be in {typed.label}: the stock is counted in {counted.label}."
    )


def _twice(lines: Sequence[TypedLine]) -> list[str]:
    times = Counter((line.per, line.block_kind) for line in lines)
    named = {(line.per, line.block_kind): _occasion(line) for line in lines}
    return [
        f"There are {number} lines for every {named[occasion]}: one says it all."
        for occasion, number in times.items()
        if number > 1
    ]


def _occasion(line: TypedLine) -> str:
    return f"{line.block_kind.label.lower()} put on" if line.block_kind else line.per.label
