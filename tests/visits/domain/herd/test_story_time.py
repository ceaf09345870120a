from tests.visits.domain.herd.small_herds import look
from tests.visits.domain.herd.told_herds import LAST_YEAR, herd_of, round_on
from visits.domain.herd.finding import FindingKind
from visits.domain.herd.rounds import rounds_of
from visits.domain.herd.story_time import time_story


def told(facts):
    return time_story(facts, rounds_of(facts), LAST_YEAR)


def test_the_share_still_free_after_half_a_year_is_told_with_its_interval():
    facts = herd_of(80, round_on(100, 80, 60), round_on(200, 80, 15), round_on(800, 80, 0))
    finding = told(facts).finding
    assert finding.kind is FindingKind.PLAIN
    assert finding.sentence.startswith("Of 100 treated feet, 80 (")
    assert finding.sentence.endswith("were not treated again within 180 days.")
    assert finding.basis.startswith("75 treated feet, 15 treated again")


def test_a_wide_interval_is_too_few_to_tell():
    facts = herd_of(80, round_on(100, 80, 6), round_on(200, 80, 3), round_on(800, 80, 0))
    finding = told(facts).finding
    assert finding.sentence == "Too few to tell: 3 of 9 treated feet treated again."


def test_feet_followed_for_less_than_half_a_year_tell_nothing_yet():
    facts = herd_of(80, round_on(700, 80, 60), round_on(800, 80, 15))
    assert told(facts).finding.kind is FindingKind.TOO_FEW
    assert told(herd_of(80, [look(700)])).finding.basis == ""


def test_many_feet_of_which_none_was_treated_again_are_told_and_a_few_are_not():
    many, few = (told(herd_of(80, round_on(100, 80, sore), round_on(800, 80, 0))) for sore in (60, 6))
    assert many.finding.sentence.startswith("Of 100 treated feet, 100 (94 to 100) were not")
    assert few.finding.sentence == "Too few to tell: 0 of 6 treated feet treated again."


def test_the_curve_is_drawn_while_five_feet_are_followed_and_half_is_marked_only_with_a_sentence():
    sparse = told(herd_of(80, *(round_on(number, 8, 8) for number in (500, 540, 580)), round_on(740, 80, 0)))
    assert (sparse.finding.kind, sparse.curve.median.day, sparse.half_by) == (FindingKind.TOO_FEW, 40, None)
    plain = told(herd_of(80, round_on(400, 80, 80), round_on(450, 80, 80), round_on(800, 80, 0)))
    assert (plain.finding.kind, plain.half_by, plain.drawn_until) == (FindingKind.PLAIN, 50, 350)
    long_followed = [round_on(number, 2, 2, first=2 * place) for place, number in enumerate((500, 550, 600))]
    tail = told(herd_of(80, *long_followed, round_on(800, 80, 0)))
    assert [tail.curve.at_risk(tail.drawn_until + extra) for extra in (0, 1)] == [6, 4]
    assert told(herd_of(80, round_on(400, 4, 4), round_on(800, 80, 0))).drawn_until == 0


def test_where_only_some_cows_are_fetched_the_sentence_says_so():
    facts = herd_of(80, round_on(100, 80, 60), round_on(200, 80, 15), round_on(800, 80, 0), herd_size=400)
    assert "were not fetched and treated again within 180 days" in told(facts).finding.sentence
