from dataclasses import replace

from tests.visits.domain.herd.told_herds import LAST_YEAR, herd_of, round_on
from visits.domain.herd.case_history import CaseKind
from visits.domain.herd.finding import FindingKind
from visits.domain.herd.herd_story import herd_told
from visits.domain.herd.story_others import OtherHerds
from visits.domain.lesions import LesionCode

NOBODY = OtherHerds()
CLEAN = round_on(10, 80, 0)


def told(*rounds, herd_size=None):
    return herd_told(herd_of(80, *rounds, herd_size=herd_size), LAST_YEAR, NOBODY)


def test_six_findings_are_told_and_a_real_change_is_the_headline():
    rounds = [round_on(100 + 150 * n, 80, 40) for n in range(4)]
    story = told(*rounds, round_on(800, 80, 8))
    assert len(story.findings) == 6
    assert story.headline == story.trend.finding.short
    assert story.headline.startswith("fewer cows with a lesion since")


def test_a_change_goes_before_what_is_merely_so():
    story = told(round_on(10, 80, 40), round_on(400, 80, 40), round_on(800, 80, 40, code="DD"))
    assert story.trend.finding.kind is FindingKind.STEADY
    assert story.headline == "more new infectious lesions than the year before"


def test_without_anything_to_tell_the_headline_says_why():
    assert told().headline == "too few cows to tell yet"
    assert (
        told(round_on(800, 20, 3), herd_size=400).headline
        == "part of the herd was seen, too little to speak for it"
    )


def test_an_empty_herd_has_six_findings_that_claim_nothing():
    assert not [finding for finding in told().findings if finding.kind.tells]


def test_cases_are_those_that_began_in_the_period_and_lame_ones_are_told_apart():
    lame = [replace(look, is_lame=look.cow < 3) for look in round_on(800, 80, 10)]
    story = told(CLEAN, round_on(100, 80, 5, code="DD"), lame)
    assert {case.lesion for case in story.cases_begun} == {LesionCode.U}
    assert (len(story.cases_begun), len(story.cases_when_lame)) == (10, 3)
    assert story.kinds_of_cases == {CaseKind.NEW: 10}


def test_cases_of_a_farm_new_to_us_are_counted_from_when_they_can_be_told():
    story = told(round_on(700, 80, 10), round_on(800, 80, 10, first=0, code="DD"))
    assert story.when_begun == "since December 2025"
    assert {case.lesion for case in story.cases_begun} == {LesionCode.DD}
    assert told(CLEAN).when_begun == "in the last year"
