"""What a cow, or a visit, uses up by the recipes of a business."""

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal

from visits.domain.actions import ActionKind, BlockKind
from visits.domain.crush_entry import CowEntry
from visits.domain.kit.stock_kinds import UsePer


@dataclass(frozen=True)
class Recipe:
    """One line: so much of a consumable, in its unit, with every `per`; of one kind of block, or of all (None)."""

    per: UsePer
    quantity: Decimal
    block_kind: BlockKind | None = None


Recipes = Mapping[int, Sequence[Recipe]]
"""By consumable (its key), the lines of its recipe."""


def used_by_cow(recipes: Recipes, entry: CowEntry) -> dict[int, Decimal]:
    """Consumable -> quantity in its unit that this cow used; what she used nothing of is left out."""
    times = _occasions(entry)
    found = {item: _sum(lines, times) for item, lines in recipes.items()}
    return {item: quantity for item, quantity in found.items() if quantity}


def used_by_visit(recipes: Recipes) -> dict[int, Decimal]:
    """Consumable -> quantity in its unit that a visit uses once, however many cows it has."""
    found = {
        item: sum((line.quantity for line in lines if line.per is UsePer.VISIT), Decimal(0))
        for item, lines in recipes.items()
    }
    return {item: quantity for item, quantity in found.items() if quantity}


def _occasions(entry: CowEntry) -> Counter[tuple[UsePer, BlockKind | None]]:
    actions = [action for foot in entry.feet for action in foot.actions]
    blocks = [action.block_kind for action in actions if action.block_kind]
    times: Counter[tuple[UsePer, BlockKind | None]] = Counter((UsePer.BLOCK, kind) for kind in blocks)
    times[UsePer.BLOCK, None] = len(blocks)
    times[UsePer.WRAP, None] = sum(action.kind is ActionKind.WRAP for action in actions)
    times[UsePer.DRESSING, None] = sum(action.kind is ActionKind.DRESSING for action in actions)
    times[UsePer.FOOT, None] = len(entry.feet)
    times[UsePer.COW, None] = 1
    return times


def _sum(lines: Sequence[Recipe], times: Counter[tuple[UsePer, BlockKind | None]]) -> Decimal:
    return sum((line.quantity * times[line.per, line.block_kind] for line in lines), Decimal(0))
