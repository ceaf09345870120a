from dataclasses import fields

from visits.domain.draft_order import Need
from visits.domain.draft_rule_sources import DRAFT_RULES, HowKnown
from visits.domain.draft_rules import DraftRules


def test_every_day_and_every_switch_of_the_rules_stands_with_its_source():
    told = [name for rule in DRAFT_RULES for name in (*rule.days, *([rule.switch] if rule.switch else []))]
    assert sorted(told) == sorted(item.name for item in fields(DraftRules))
    assert all(rule.sources for rule in DRAFT_RULES)


def test_there_is_a_rule_for_every_need_and_two_warnings():
    assert len(DRAFT_RULES) == len(Need) + 2


def test_where_sources_disagree_it_is_said():
    told = {rule.name for rule in DRAFT_RULES if rule.disagreement}
    assert {"Days in milk", "Warned of before calving"} <= told


def test_what_nobody_published_is_called_common_practice():
    (heifers,) = [rule for rule in DRAFT_RULES if rule.switch == "use_heifers"]
    assert HowKnown.PRACTICE in {source.how for source in heifers.sources}
