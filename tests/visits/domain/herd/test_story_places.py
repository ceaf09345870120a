from tests.visits.domain.herd.told_herds import LAST_YEAR, seen_with
from visits.domain.feet import Claw, Foot
from visits.domain.herd.facts import LesionSeen
from visits.domain.herd.finding import FindingKind
from visits.domain.herd.story_places import place_words, places_story
from visits.domain.lesions import DDStage, LesionCode

ULCER = LesionSeen(LesionCode.SU, Claw.LATERAL, 4)
SKIN = LesionSeen(LesionCode.DD, Claw.SKIN, 9)
HEALED = LesionSeen(LesionCode.DD, Claw.SKIN, 9, dd_stage=DDStage.M0)


def looks(ulcers, skins, clean=0, number=800):
    kinds = [ULCER] * ulcers + [SKIN] * skins
    feet = (Foot.LEFT_HIND, Foot.RIGHT_HIND)
    return [
        *(seen_with(cow, number, kind, foot=feet[cow % 2]) for cow, kind in enumerate(kinds)),
        *(seen_with(100 + cow, number) for cow in range(clean)),
    ]


def test_the_place_that_clearly_leads_is_told_with_its_cows_of_both_hind_feet():
    finding = places_story(looks(20, 3, 7), LAST_YEAR).finding
    assert finding.kind is FindingKind.PLAIN
    assert finding.sentence == "Most often hind outer claw, where sole meets heel: 20 of 30 cows seen."


def test_two_places_about_alike_are_both_told_and_neither_leads():
    finding = places_story(looks(12, 9), LAST_YEAR).finding
    assert finding.kind is FindingKind.STEADY
    assert finding.sentence.startswith(
        "No single place leads for sure: hind outer claw, where sole meets heel (12 cows)"
    )


def test_a_few_cows_are_too_few_to_tell_where():
    assert places_story(looks(4, 0, 40), LAST_YEAR).finding.kind is FindingKind.TOO_FEW
    assert "at most 0 cows" in places_story([], LAST_YEAR).finding.sentence


def test_a_cow_seen_twice_with_it_counts_once_and_healthy_skin_not_at_all():
    twice = [*looks(6, 0), *looks(6, 0, number=850), seen_with(50, 800, HEALED)]
    assert "6 of 7 cows" in places_story(twice, LAST_YEAR).finding.sentence


def test_looks_before_the_period_do_not_count():
    story = places_story(looks(20, 0, number=100), LAST_YEAR)
    assert story.counts == ()


def test_places_are_named_in_the_words_of_the_trade():
    assert place_words((True, Claw.SKIN, 10)) == "hind feet, cleft between the heels"
    assert place_words((False, Claw.MEDIAL, 1)) == "fore inner claw, white line at the toe"
