from dataclasses import replace

from tests.visits.documents.letters import AT, foot_of, make_letter
from visits.documents.referral_letter_change import letter_changes
from visits.domain.feet import Foot


def test_the_same_letter_changes_nothing_whenever_it_is_made():
    assert letter_changes(make_letter(), make_letter(made_at=AT.replace(year=2027), version=2)) == ()


def test_each_part_that_differs_is_named_once():
    after = make_letter(photos=3, photos_left_out=1, told=(), walked=())
    assert letter_changes(make_letter(), after) == ("how she walks", "who was told", "photos")


def test_feet_are_told_one_by_one():
    before, after = make_letter(1), make_letter(2)
    assert letter_changes(before, after) == ("right hind added",)
    assert letter_changes(after, before) == ("right hind taken out",)
    sore = replace(foot_of(Foot.LEFT_HIND), signs=("swelling",), done=())
    assert letter_changes(before, replace(before, feet=(sore,))) == (
        "left hind: signs",
        "left hind: what was done",
    )
