"""The rule that a business's visits are told by: learned, or the planning figures while there is too little history."""

from dataclasses import dataclass

from trimops.kernel.scope import Scope
from visits.domain.arrival_windows.day_ahead import Spread
from visits.domain.visit_lengths.learned_rule import LearnedRule, usual_rule
from visits.domain.visit_lengths.rule_document import NotALearnedRule, rule_of_document
from visits.models import LearnedLengths
from visits.selectors.business_figures import figures_of

DRIVES = ("drive_ratio", "drive_spread", "leave_late", "leave_spread")
"""The figures of `Spread` that are kept beside the rule."""


@dataclass(frozen=True)
class RuleInUse:
    """`row` is None while nothing was learned."""

    rule: LearnedRule
    spread: Spread
    row: LearnedLengths | None


def rule_in_use(scope: Scope) -> RuleInUse:
    """One query, two without a learned rule."""
    row = LearnedLengths.objects.within(Scope(scope.business_id)).first()
    if row is not None:
        try:
            rule = rule_of_document(row.rule)
        except NotALearnedRule:
            # Kept by an older version: it goes by the figures until the next night.
            row = None
        else:
            return RuleInUse(rule, _spread(rule, row.drives), row)
    rule = usual_rule(figures_of(scope).length)
    return RuleInUse(rule, _spread(rule, {}), row)


def _spread(rule: LearnedRule, drives: dict[str, float]) -> Spread:
    known = {name: float(drives[name]) for name in DRIVES if name in drives}
    return Spread(lengths=rule.shape, day_share=rule.day_share, **known)
