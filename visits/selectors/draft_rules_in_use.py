"""By which draft rules a farm goes."""

from dataclasses import dataclass

from farms.models import Farm
from visits.domain.draft_rules import RULE_SETS, USUAL, DraftRules, DraftRuleSet, draft_rules
from visits.domain.own_figures import FigureRefused
from visits.models import DraftChoice


@dataclass(frozen=True)
class RulesInUse:
    """The set that the farm chose, with its own days in place; `choice` is None where it goes by the usual set."""

    rule_set: DraftRuleSet
    rules: DraftRules
    choice: DraftChoice | None = None

    @property
    def is_own(self) -> bool:
        """Whether something of the set was changed."""
        return self.rules != self.rule_set.rules


def rules_in_use(farm: Farm) -> RulesInUse:
    """One query."""
    choice = DraftChoice.objects.within(farm.scope).filter(farm=farm).select_related("changed_by").first()
    if choice is None:
        return RulesInUse(USUAL, USUAL.rules)
    rule_set = RULE_SETS.get(choice.rule_set, USUAL)
    try:
        return RulesInUse(rule_set, draft_rules(rule_set.id, choice.own), choice)
    except FigureRefused:
        # Kept by a version that knew other rules: the farm goes by the set until somebody chooses again.
        return RulesInUse(rule_set, rule_set.rules)
