import pytest

from tests.visits.documents.letters import foot_of, make_letter
from visits.documents.referral_letter_content import LetterFoot
from visits.documents.referral_letter_words import (
    foot_told,
    letter_change,
    letter_facts,
    letter_title,
    photo_words,
)
from visits.domain.feet import Foot


@pytest.mark.parametrize(
    ("feet", "what"),
    [
        (0, "lameness for the vet"),
        (1, "left hind foot for the vet"),
        (2, "left hind and right hind feet for the vet"),
        (3, "3 feet for the vet"),
    ],
)
def test_the_title_says_which_feet(feet, what):
    assert letter_title(make_letter(feet)) == f"Cow 412, High Thornbeck: {what}"


def test_the_facts_say_when_and_by_whom():
    assert letter_facts(make_letter()) == (
        "Seen at the trim on Tuesday 1 December 2026 by Ann Brook, Skelderdale Foot Trimming."
    )


def test_what_is_not_known_of_a_foot_is_left_out_and_nothing_cut_is_said():
    told = foot_told(LetterFoot(Foot.RIGHT_FORE, ("dead toe",)))
    assert (told.heading, told.said) == (
        "Right fore",
        (("Why the vet", "Dead toe."), ("Done", "Nothing was cut.")),
    )


def test_every_lesion_of_the_letter_is_drawn_as_the_vet_s():
    assert [mark.for_vet for mark in foot_told(foot_of()).sole.marks] == [True]


def test_a_photo_says_which_foot_and_when():
    assert photo_words(make_letter().photos[0]) == "left hind, 1 December 2026, 10:20"


def test_the_first_version_says_nothing_of_a_change():
    assert letter_change(make_letter()) == ""
    assert letter_change(make_letter(version=3)).endswith("Changed: not said")
