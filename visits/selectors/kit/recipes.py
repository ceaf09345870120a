"""What the business's recipes say."""

from collections import defaultdict

from trimops.kernel.scope import Scope
from visits.domain.actions import BlockKind
from visits.domain.kit.stock_kinds import UsePer
from visits.domain.kit.use_rules import Recipe, Recipes
from visits.models import UseRule


def recipes_of(scope: Scope) -> Recipes:
    """By consumable in use, the lines of its recipe. One query."""
    found: defaultdict[int, list[Recipe]] = defaultdict(list)
    for rule in UseRule.objects.within(scope).filter(consumable__is_active=True):
        kind = BlockKind(rule.block_kind) if rule.block_kind else None
        found[rule.consumable_id].append(Recipe(UsePer(rule.per), rule.quantity, kind))
    return found
