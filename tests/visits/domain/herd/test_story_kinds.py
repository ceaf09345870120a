from datetime import timedelta

from tests.visits.domain.herd.small_herds import TODAY, day, look
from tests.visits.domain.herd.told_herds import LAST_YEAR, herd_of, round_on
from visits.domain.herd.case_history import cases_of
from visits.domain.herd.finding import FindingKind
from visits.domain.herd.rounds import rounds_of
from visits.domain.herd.story_kinds import kinds_story, told_from
from visits.domain.herd.story_trend import month_of

CLEAN = round_on(10, 50, 0)


def told(*rounds, herd_size=None):
    facts = herd_of(50, *rounds, herd_size=herd_size)
    return kinds_story(facts, cases_of(facts), rounds_of(facts), LAST_YEAR)


def test_new_cases_are_counted_after_the_first_whole_round_or_a_year_after_picked_cows():
    whole = rounds_of(herd_of(50, CLEAN))
    assert told_from(whole) == day(11)
    assert told_from(rounds_of(herd_of(500, CLEAN))) == day(11 + 365)
    assert told_from(()) is None


def test_a_real_fall_is_told_with_cases_and_cow_years_of_both_years():
    finding = told(CLEAN, round_on(400, 50, 30), round_on(800, 50, 4, first=0)).finding
    assert finding.kind is FindingKind.BETTER
    assert finding.sentence == (
        "Fewer new claw-horn lesions, 4 in 50 cow-years against 30 in 50 the year before."
    )
    assert finding.short == "fewer new claw-horn lesions than the year before"


def test_a_rise_is_told_as_worse():
    finding = told(CLEAN, round_on(400, 50, 4), round_on(800, 50, 30)).finding
    assert finding.kind is FindingKind.WORSE
    assert finding.sentence.startswith("More new claw-horn lesions, 30 in 50 cow-years against 4")


def test_the_first_year_is_never_held_against_the_next_since_old_lesions_cannot_be_told_in_it():
    first = round_on(400, 50, 0)
    finding = told(first, round_on(800, 50, 30)).finding
    assert finding.kind is FindingKind.PLAIN
    assert "year before" not in finding.sentence
    assert (
        finding.sentence
        == "Most new cases are claw-horn lesions: 0 infectious and 30 claw-horn in the last year."
    )


def test_years_alike_say_which_kind_leads_and_that_nothing_changed():
    finding = told(CLEAN, round_on(400, 50, 20), round_on(800, 50, 22)).finding
    assert finding.sentence.endswith("22 claw-horn in the last year. No change told against the year before.")


def test_neither_kind_leads_when_their_cases_are_about_as_many():
    both = [look(800, "SU", cow=1), look(800, "SU", cow=2), look(800, "DD", cow=3)]
    finding = told(CLEAN, both, round_on(800, 40, 0, first=5)).finding
    assert finding.kind is FindingKind.STEADY
    assert (
        finding.sentence
        == "Neither kind leads for sure: 1 infectious and 2 claw-horn new cases in the last year."
    )


def test_a_year_without_a_case_says_over_how_much_time():
    finding = told(CLEAN, round_on(800, 50, 0)).finding
    assert finding.sentence == "No new case was seen in the last year, in 50 cow-years."


def test_too_little_time_says_from_when_it_will_be_told():
    finding = told(round_on(800, 50, 30)).finding
    assert finding.kind is FindingKind.TOO_FEW
    assert month_of(day(801)) in finding.sentence
    assert told().finding.kind is FindingKind.TOO_FEW


def test_a_herd_with_most_cows_off_the_list_is_not_told_of():
    story = told(CLEAN, round_on(800, 50, 10), herd_size=200)
    assert (
        story.finding.sentence
        == "Too few of the herd's cows are on the list to count new cases over cow-years."
    )
    assert story.years == ()


def test_only_years_that_can_be_told_are_shown_and_a_part_says_so():
    story = told(round_on(100, 50, 5), round_on(800, 50, 10))
    start = day(101)
    assert [year.label for year in story.years] == [
        f"{start.year}, from {month_of(start).split()[0]}",
        str(start.year + 1),
    ]
    assert (TODAY - timedelta(days=180)).year == start.year + 1
