import pytest

from tests.visits.domain.herd.told_herds import LAST_YEAR, herd_of, round_on
from visits.domain.herd.against_others import Verdict
from visits.domain.herd.finding import FindingKind
from visits.domain.herd.rounds import rounds_of
from visits.domain.herd.shrunken_rates import HerdCount
from visits.domain.herd.story_others import COMPARED, OtherHerds, others_story
from visits.domain.lesions import LesionCode


def others(*cows):
    """Other herds of eighty with so many cows that had it, whatever it is."""
    return OtherHerds({what: tuple(HerdCount(count, 80) for count in cows) for what in COMPARED})


def told(lame, herds, herd_size=None, number=800):
    facts = herd_of(80, round_on(number, 80, lame), herd_size=herd_size)
    return others_story(rounds_of(facts), herds, "GB", LAST_YEAR)


def test_a_herd_far_above_the_others_is_told_without_a_name_or_a_rank():
    finding = told(70, others(20, 22, 18, 25, 21, 19)).finding
    assert finding.kind is FindingKind.WORSE
    assert finding.sentence.startswith("More cows with any lesion (88 against 26 per 100)")
    assert finding.sentence.endswith("than in the 6 other herds seen as a whole.")


def test_a_herd_below_the_others_is_told_as_better():
    assert told(0, others(30, 32, 28, 35, 31, 29)).finding.kind is FindingKind.BETTER


def test_a_herd_among_the_others_is_not_told_apart():
    """Here and there some cows had ulcers and no cow had anything else."""
    some, none = others(20, 22, 18, 25, 21), others(0, 0, 0, 0, 0)
    mixed = {what: (some if what in (None, LesionCode.U) else none).counts[what] for what in COMPARED}
    story = told(20, OtherHerds(mixed))
    assert story.finding.sentence == "Not told apart from the 5 other herds seen as a whole."
    assert story.others == 5


def test_herds_that_all_had_none_are_alike():
    assert told(0, others(0, 0, 0, 0, 1)).finding.kind is FindingKind.STEADY


def test_what_only_one_of_the_two_measures_sets_apart_is_not_told():
    """No sore in one very large other herd, many in the small ones: far below their mean, not below all their cows."""
    counts = {what: others(0, 0, 0, 0, 0, 0, 0, 0, 0).counts[what] for what in COMPARED}
    counts[LesionCode.DD] = (*[HerdCount(30, 80)] * 8, HerdCount(0, 4000))
    story = told(0, OtherHerds(counts))
    sores = next(each for each in story.compared if each.rate.code is LesionCode.DD)
    assert sores.business.verdict is Verdict.LOWER
    assert story.finding.sentence == "Not told apart from the 9 other herds seen as a whole."
    assert story.finding.kind is FindingKind.STEADY


@pytest.mark.parametrize("herds", [others(), others(20, 22, 18)])
def test_three_other_herds_are_never_shown_not_even_as_a_mean(herds):
    story = told(70, herds)
    assert story.finding.kind is FindingKind.TOO_FEW
    assert story.others == 0
    assert [each.business for each in story.compared] == [None] * len(COMPARED)


def test_figures_in_print_stand_beside_it_all_the_same():
    assert all(len(each.published) == 1 for each in told(70, others()).compared)


@pytest.mark.parametrize("more", [{"herd_size": 300}, {"number": 10}])
def test_picked_cows_or_a_round_of_long_ago_are_not_compared(more):
    story = told(70, others(20, 22, 18, 25), **more)
    assert (story.finding.kind, story.compared) == (FindingKind.PICKED, ())
