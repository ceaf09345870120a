from tests.visits.domain.herd.small_herds import day
from tests.visits.domain.herd.told_herds import LAST_YEAR, herd_of, life_calved, round_on
from visits.domain.herd.finding import FindingKind
from visits.domain.herd.rounds import rounds_of
from visits.domain.herd.story_groups import groups_story

# Forty heifers after their first calf and forty old cows, all calved on one day.
COWS = tuple(life_calved(cow, 1 if cow < 40 else 5, 700) for cow in range(80))


def told(*rounds, cows=COWS, herd_size=80):
    facts = herd_of(80, *rounds, cows=cows, herd_size=herd_size)
    return groups_story(facts, rounds_of(facts), LAST_YEAR)


def old_cows_worse(number, young=4, old=30):
    return [*round_on(number, 40, young), *round_on(number, 40, old, first=40)]


def group(story, parting, label):
    groups = next(each.groups for each in story.partings if each.label == parting)
    return next(each for each in groups if each.group == label)


def test_groups_that_differ_for_sure_are_told_with_their_counts():
    finding = told(old_cows_worse(800)).finding
    assert finding.kind is FindingKind.PLAIN
    assert finding.sentence == (
        "Lesions more often in lactation 4 and more (30 of 40 cows) than in lactation 1 (4 of 40)."
    )


def test_groups_that_might_differ_by_chance_are_not_told():
    finding = told(old_cows_worse(800, young=15, old=22)).finding
    assert finding.kind is FindingKind.TOO_FEW
    assert finding.sentence == "Too few cows to tell groups apart: 37 of 80 cows had a lesion."


def test_each_cow_counts_by_her_last_look_however_often_she_was_seen():
    story = told(old_cows_worse(600), old_cows_worse(800, young=0, old=0))
    assert (story.everyone.count, story.everyone.total) == (0, 80)
    assert (group(story, "Lactation", "4 and more").cows, group(story, "Lactation", "4 and more").seen) == (
        0,
        40,
    )


def test_seasons_are_shown_and_never_told_apart():
    """A herd that got better would else have bad winters."""
    assert day(600).month in (8, 9)
    story = told(old_cows_worse(600, 35, 35), old_cows_worse(800, 3, 3))
    assert story.finding.kind is FindingKind.TOO_FEW
    assert [each.seen for each in story.partings[2].groups].count(80) == 2


def test_picked_cows_say_nothing_of_the_herd():
    story = told(old_cows_worse(800), herd_size=300)
    assert story.finding.kind is FindingKind.PICKED
    assert story.everyone.total == 0
