import pytest

from tests.visits.domain.herd.small_herds import day, look
from tests.visits.domain.herd.told_herds import LAST_YEAR, herd_of, round_on
from visits.domain.herd.finding import FindingKind
from visits.domain.herd.rounds import rounds_of
from visits.domain.herd.story_trend import MOST_POINTS, month_of, trend_story
from visits.domain.visit_states import VisitReason


def told(facts):
    return trend_story(facts, rounds_of(facts), LAST_YEAR)


def test_a_herd_that_was_never_seen_has_nothing_to_tell():
    assert told(herd_of(50)).finding.kind is FindingKind.TOO_FEW


def test_picked_cows_tell_of_themselves_and_not_of_the_herd():
    story = told(herd_of(100, round_on(700, 20, 12), round_on(800, 20, 15)))
    assert story.finding.kind is FindingKind.PICKED
    assert "last time 15 of 20 cows seen (of a herd of 100) had a lesion" in story.finding.sentence
    assert (story.chart.points, len(story.points)) == ((), 2)


def test_two_whole_rounds_are_too_few_for_a_change_however_far_apart_they_lie():
    finding = told(herd_of(80, round_on(600, 80, 70), round_on(800, 80, 5))).finding
    assert finding.kind is FindingKind.TOO_FEW
    assert "5 of 80 cows seen" in finding.sentence


@pytest.mark.parametrize(
    ("later", "kind", "words"), [(8, FindingKind.BETTER, "Fewer"), (76, FindingKind.WORSE, "More")]
)
def test_a_change_that_chance_could_not_make_is_told_with_its_counts(later, kind, words):
    rounds = [round_on(100 + 150 * n, 80, 40) for n in range(4)]
    finding = told(herd_of(80, *rounds, round_on(800, 80, later))).finding
    assert finding.kind is kind
    since = month_of(day(800))
    assert finding.sentence == (
        f"{words} cows with a lesion since {since}: {later} of 80 cows seen in the round then, "
        "160 of 320 in those before."
    )
    assert finding.short == f"{words.lower()} cows with a lesion since {since}"
    assert "A herd in which nothing changes is flagged in" in finding.basis


def test_the_rounds_since_a_change_are_all_of_them_and_not_only_those_up_to_its_flag():
    rounds = [round_on(100 + 150 * n, 80, 60) for n in range(3)]
    later = [round_on(700, 80, 20), round_on(800, 80, 31)]
    finding = told(herd_of(80, *rounds, *later)).finding
    assert "51 of 160 cows seen in the 2 rounds since, 180 of 240 in those before" in finding.sentence


def test_rounds_that_differ_as_chance_lets_them_are_no_change():
    rounds = [round_on(100 + 150 * n, 80, lame) for n, lame in enumerate((40, 36, 43, 38, 34))]
    finding = told(herd_of(80, *rounds)).finding
    assert finding.kind is FindingKind.STEADY
    assert finding.sentence.startswith("No change that chance could not make: 34 of 80 cows seen")
    assert not finding.short


def test_a_change_of_long_ago_is_not_news():
    early = [round_on(20 + 40 * n, 80, 60) for n in range(4)]
    late = [round_on(300 + 100 * n, 80, 10) for n in range(6)]
    finding = told(herd_of(80, *early, *late)).finding
    assert finding.kind is FindingKind.STEADY
    assert f"No change since {month_of(day(300))}" in finding.sentence


def test_cows_fetched_for_lameness_are_no_point_of_the_picture():
    lame = [look(700, "SU", cow=cow, reason=VisitReason.URGENT) for cow in range(40)]
    assert told(herd_of(40, lame)).points == ()


def test_the_picture_holds_no_more_rounds_than_can_be_read():
    rounds = [round_on(20 * n, 5, 1) for n in range(44)]
    story = told(herd_of(80, *rounds))
    assert len(story.points) == MOST_POINTS
    assert story.points[-1].day == day(20 * 43)
