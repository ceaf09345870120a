"""By which rules cows are wanted at the crush: named sets, and a farm's own days laid over them.

Published sources disagree on when a sound cow is to be trimmed, so every routine rule can be switched off and every
number of days is the farm's. Where each rule comes from stands in `draft_rule_sources`. Lameness, blocks and re-checks
that are due, and cows asked for cannot be switched off.
"""

from collections.abc import Mapping
from dataclasses import dataclass, fields, replace

from visits.domain.own_figures import FigureRefused

MOST_DAYS = 400
LEAST_CALVING_WARNING = 28
"""Odds of abortion 2.4 times as high after a trim in the last four weeks (Thomsen 2020): no farm warns later."""


@dataclass(frozen=True)
class DraftRules:
    """Which reasons the farm goes by, and their days."""

    score_counts: int = 28
    use_dry_off: bool = True
    dry_off_from: int = 3
    dry_off_to: int = 10
    use_heifers: bool = True
    heifer_from: int = 29
    heifer_to: int = 60
    use_milk_days: bool = True
    milk_from: int = 60
    milk_to: int = 100
    use_long_ago: bool = True
    trim_again_after: int = 150
    calving_warning: int = LEAST_CALVING_WARNING

    def pressing_only(self) -> "DraftRules":
        """For a visit that is no routine one: no sound cow fills its places."""
        return replace(self, use_dry_off=False, use_heifers=False, use_milk_days=False, use_long_ago=False)


@dataclass(frozen=True)
class DraftRuleSet:
    """A set of rules under a name of ours. `told` says in a sentence for whom it is."""

    id: str
    name: str
    told: str
    rules: DraftRules


USUAL = DraftRuleSet(
    "round",
    "The whole round",
    "Before drying off, heifers before calving, at 60 to 100 days in milk, and who has gone longest without.",
    DraftRules(),
)
RULE_SETS: Mapping[str, DraftRuleSet] = {
    each.id: each
    for each in (
        USUAL,
        DraftRuleSet(
            "dry_off",
            "Around drying off",
            "Before drying off and heifers before calving; no look in mid-lactation, on which the trials disagree.",
            DraftRules(use_milk_days=False, trim_again_after=210),
        ),
        DraftRuleSet(
            "spaced",
            "Evenly spaced",
            "Whoever was not trimmed for five months, wherever she is in her lactation.",
            DraftRules(use_dry_off=False, use_heifers=False, use_milk_days=False),
        ),
        DraftRuleSet(
            "pressing",
            "Only what presses",
            "Lame cows, blocks and re-checks that are due, and cows asked for; no sound cow by a rule.",
            DraftRules().pressing_only(),
        ),
    )
}
_PAIRS = (("dry_off_from", "dry_off_to"), ("heifer_from", "heifer_to"), ("milk_from", "milk_to"))


def draft_rules(rule_set: str, own: Mapping[str, object]) -> DraftRules:
    """The set's rules with a farm's own in their place. FigureRefused names what to mend."""
    if rule_set not in RULE_SETS:
        raise FigureRefused(f"{rule_set}: no rule set is called that; there are {', '.join(RULE_SETS)}")
    usual = RULE_SETS[rule_set].rules
    kinds = {item.name: type(getattr(usual, item.name)) for item in fields(usual)}
    for name, value in own.items():
        if name not in kinds:
            raise FigureRefused(f"{name}: is no draft rule; known are {', '.join(kinds)}")
        _check(name, value, kinds[name])
    rules = replace(usual, **dict(own))  # type: ignore[arg-type]  # because: checked name by name above
    for first, last in _PAIRS:
        if getattr(rules, first) > getattr(rules, last):
            raise FigureRefused(f"{last}: must not be below {first}")
    if rules.calving_warning < LEAST_CALVING_WARNING:
        raise FigureRefused(f"calving_warning: must not be below {LEAST_CALVING_WARNING} days")
    return rules


def own_of(rule_set: str, rules: DraftRules) -> dict[str, int | bool]:
    """What of these rules differs from that set: the form in which a farm's own are kept."""
    usual = RULE_SETS[rule_set].rules
    return {
        item.name: getattr(rules, item.name)
        for item in fields(rules)
        if getattr(rules, item.name) != getattr(usual, item.name)
    }


def _check(name: str, value: object, kind: type) -> None:
    if type(value) is not kind:
        raise FigureRefused(f"{name}: must be {'yes or no' if kind is bool else 'a whole number of days'}")
    if isinstance(value, int) and not 0 <= value <= MOST_DAYS:
        raise FigureRefused(f"{name}: must be between 0 and {MOST_DAYS} days")
