"""A farm goes by a set of draft rules, and by its own days where they differ."""

from collections.abc import Mapping
from datetime import datetime

from django.db import transaction

from farms.models import Farm
from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken
from visits.domain.draft_rules import draft_rules, own_of
from visits.domain.own_figures import FigureRefused
from visits.models import DraftChoice


class DraftRulesMakeNoSense(RuleBroken):
    """The message names the rule and says what to mend."""

    code = "draft_rules_make_no_sense"


@transaction.atomic
def choose_draft_rules(
    *, farm: Farm, rule_set: str, own: Mapping[str, object], at: datetime, by: User
) -> DraftChoice:
    """Only what differs from the set is kept. DraftRulesMakeNoSense keeps nothing."""
    try:
        rules = draft_rules(rule_set, own)
    except FigureRefused as fault:
        raise DraftRulesMakeNoSense(str(fault)) from fault
    rows = DraftChoice.objects.within(farm.scope).filter(farm=farm)
    row = rows.select_for_update().first() or DraftChoice(business_id=farm.business_id, farm=farm)
    row.rule_set, row.own = rule_set, own_of(rule_set, rules)
    row.changed_at, row.changed_by = at, by
    row.full_clean()
    row.save()
    return row
