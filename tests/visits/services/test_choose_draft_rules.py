import pytest

from tests.factories import NOON
from visits.models import DraftChoice
from visits.selectors.draft_rules_in_use import rules_in_use
from visits.services.choose_draft_rules import DraftRulesMakeNoSense, choose_draft_rules


def choose(house, rule_set="round", **own):
    return choose_draft_rules(farm=house.farm, rule_set=rule_set, own=own, at=NOON, by=house.office)


def test_a_farm_without_a_choice_goes_by_the_usual_set(house):
    using = rules_in_use(house.farm)
    assert (using.rule_set.id, using.is_own, using.choice) == ("round", False, None)


def test_the_set_and_what_differs_from_it_are_kept_with_who_and_when(house):
    row = choose(house, "spaced", trim_again_after=180, score_counts=28)
    assert row.own == {"trim_again_after": 180}
    using = rules_in_use(house.farm)
    assert (using.rules.trim_again_after, using.rules.use_milk_days, using.is_own) == (180, False, True)
    assert (using.choice.changed_by, using.choice.changed_at) == (house.office, NOON)


def test_another_choice_takes_the_place_of_the_first(house):
    choose(house, "spaced", trim_again_after=180)
    choose(house, "pressing")
    (row,) = DraftChoice.objects.within(house.scope)
    assert (row.rule_set, row.own) == ("pressing", {})


def test_what_makes_no_sense_keeps_nothing(house):
    choose(house, "dry_off")
    with pytest.raises(DraftRulesMakeNoSense, match="milk_to: must not be below milk_from"):
        choose(house, milk_from=90, milk_to=80)
    assert rules_in_use(house.farm).rule_set.id == "dry_off"


def test_a_choice_of_an_older_version_falls_back_to_its_set_or_the_usual_one(house):
    row = choose(house, "spaced")
    row.own = {"moon": 3}
    row.save()
    assert rules_in_use(house.farm).rule_set.id == "spaced"
    row.rule_set, row.own = "gone", {}
    row.save()
    assert rules_in_use(house.farm).rule_set.id == "round"
