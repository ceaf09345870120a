"""The list on paper says how it fits its time, by which rules it was made, and who must not be brought."""

from datetime import timedelta

from tests.factories import NOON, TUESDAY_TEN, confirmed, make_cow, make_farm, named, planned, wanted
from visits.domain.mobility import MobilityScale
from visits.domain.visit_states import VisitReason
from visits.selectors.draft_content import draft_content
from visits.services.choose_draft_rules import choose_draft_rules
from visits.services.expect_cows import expect_cows
from visits.services.note_scores import CowScore, ScoringWord, note_scores
from visits.services.strike_cow import strike_cow

TODAY = NOON.date()


def scored(house, cows, score=2):
    word = ScoringWord(TODAY, MobilityScale.UK, [CowScore(cow.pk, score) for cow in cows])
    note_scores(farm=house.farm, word=word, at=NOON, by=house.client)


def test_cows_stand_by_need_and_those_beyond_the_count_are_left_and_counted(house):
    cows = [make_cow(house.farm, str(number)) for number in range(15)]
    scored(house, cows)
    made = draft_content(wanted(house.farm, head_count=3), NOON)
    assert [(group.need, len(group.cows)) for group in made.groups] == [("Lame now", 3)]
    assert (len(made.left_for_next), made.left_count) == (10, 12)
    assert "12 lame cows are not on the list: tell us at once" in made.time_note
    assert made.arrive is None
    assert made.day == TODAY


def test_who_was_struck_is_told_with_why_and_by_whom(house):
    visit = planned(house.farm, house.van, cows=[named(house.cow)])
    visit = strike_cow(visit=visit, cow=house.cow, why="sold", at=NOON, by=house.client)
    (struck,) = draft_content(visit, NOON).struck
    assert (struck.number, struck.why, struck.by) == ("101", "sold", str(house.client))


def test_the_rules_are_named_with_the_day_on_which_they_were_chosen(house):
    visit = planned(house.farm, house.van)
    assert draft_content(visit, NOON).rule_note.startswith("Rules: “The whole round”. Lame cows first")
    choose_draft_rules(farm=house.farm, rule_set="spaced", own={"score_counts": 9}, at=NOON, by=house.office)
    assert draft_content(visit, NOON).rule_note.startswith(
        "Rules: “Evenly spaced” with the farm's own days, chosen 2 Mar 2026."
    )
    urgent = wanted(house.farm, reason=VisitReason.URGENT)
    assert "No routine visit, so only what presses is on it." in draft_content(urgent, NOON).rule_note


def test_a_list_longer_than_its_time_says_by_how_many_cows(house):
    cows = [make_cow(house.farm, str(number)) for number in range(20)]
    visit = confirmed(house.farm, house.van, cows=[named(cow) for cow in cows], head_count=2)
    assert draft_content(visit, NOON).time_note.startswith("About 3 h 15 for 20 cows.")
    there = make_farm(house.business, "High Croft", by=house.owner, latitude="54.15")
    planned(there, house.van, TUESDAY_TEN + timedelta(hours=2), head_count=2)
    assert "more than the time allows: the trimmer will ring." in draft_content(visit, NOON).time_note
    visit = expect_cows(visit=visit, count=20, at=NOON, by=house.office)
    assert "more than the time allows: the trimmer will ring." in draft_content(visit, NOON).time_note


def test_nothing_is_said_of_time_where_no_cow_is_on_the_list(house):
    assert draft_content(planned(house.farm, house.van), NOON).time_note == ""
