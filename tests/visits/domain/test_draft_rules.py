import re

import pytest

from visits.domain.draft_rules import RULE_SETS, USUAL, DraftRules, draft_rules, own_of
from visits.domain.own_figures import FigureRefused


def test_a_farms_own_days_lie_over_those_of_the_set():
    rules = draft_rules("dry_off", {"dry_off_to": 14, "use_heifers": False})
    assert (rules.dry_off_from, rules.dry_off_to, rules.use_heifers, rules.use_milk_days) == (
        3,
        14,
        False,
        False,
    )


def test_only_what_differs_is_kept():
    assert own_of("spaced", draft_rules("spaced", {"trim_again_after": 150, "score_counts": 14})) == {
        "score_counts": 14
    }
    assert own_of("round", DraftRules()) == {}


def test_a_visit_that_is_no_routine_one_keeps_the_days_but_no_routine_rule():
    rules = DraftRules(score_counts=14).pressing_only()
    assert rules == DraftRules(
        score_counts=14, use_dry_off=False, use_heifers=False, use_milk_days=False, use_long_ago=False
    )


@pytest.mark.parametrize("rule_set", RULE_SETS)
def test_every_set_is_told_by_its_name_and_keeps_the_warning(rule_set):
    assert RULE_SETS[rule_set].id == rule_set
    assert draft_rules(rule_set, {}) == RULE_SETS[rule_set].rules
    assert RULE_SETS[rule_set].rules.calving_warning >= 28


def test_the_usual_set_goes_by_the_published_days():
    """AHDB: 3 to 10 days before drying off; Griffiths 2018: 60 to 100 days in milk; Thomsen 2020: 28 days."""
    rules = USUAL.rules
    assert (rules.dry_off_from, rules.dry_off_to, rules.milk_from, rules.milk_to) == (3, 10, 60, 100)
    assert rules.calving_warning == 28


@pytest.mark.parametrize(
    ("rule_set", "own", "words"),
    [
        ("nonsense", {}, "no rule set is called that"),
        ("round", {"moon": 3}, "moon: is no draft rule"),
        ("round", {"milk_from": True}, "milk_from: must be a whole number of days"),
        ("round", {"milk_from": 3.5}, "milk_from: must be a whole number of days"),
        ("round", {"use_heifers": 1}, "use_heifers: must be yes or no"),
        ("round", {"milk_from": -1}, "milk_from: must be between 0 and 400"),
        ("round", {"milk_from": 101}, "milk_to: must not be below milk_from"),
        ("round", {"calving_warning": 27}, "calving_warning: must not be below 28"),
    ],
)
def test_what_makes_no_sense_is_named(rule_set, own, words):
    with pytest.raises(FigureRefused, match=re.escape(words)):
        draft_rules(rule_set, own)
