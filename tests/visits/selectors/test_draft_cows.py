"""What of a farm's past and its wishes comes onto the list."""

from datetime import timedelta

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from tests.factories import (
    NOON,
    TUESDAY_TEN,
    blocked_foot,
    finish,
    make_cow,
    make_farm,
    named,
    planned,
    put_down,
    trimmed_foot,
    under_way,
)
from visits.domain.mobility import MobilityScale
from visits.domain.visit_states import VisitReason
from visits.selectors.crush_list import crush_list
from visits.selectors.draft_cows import gather_draft
from visits.services.choose_draft_rules import choose_draft_rules
from visits.services.gather_farm_rechecks import gather_farm_rechecks
from visits.services.note_scores import CowScore, ScoringWord, note_scores
from visits.services.strike_cow import strike_cow

LATER = TUESDAY_TEN + timedelta(days=28)
DAY = LATER.date()


def scored(house, cow, score, days_ago, scale=MobilityScale.UK):
    word = ScoringWord(DAY - timedelta(days=days_ago), scale, [CowScore(cow.pk, score)])
    note_scores(farm=cow.farm, word=word, at=LATER, by=house.client)


def why(visit, count=None):
    order = gather_draft(visit).order(visit.head_count if count is None else count)
    return {line.number: line.why for line in order.present}


@pytest.fixture
def visit(house):
    return planned(house.farm, house.van, LATER)


def test_a_lame_cow_comes_with_her_score_its_sheet_and_its_day(house, visit):
    scored(house, house.cow, 2, 3)
    scored(house, make_cow(house.farm, "7"), 4, 3, MobilityScale.SPRECHER)
    assert why(visit) == {
        "7": "lame, Sprecher 1 to 5: 4 on Sat 28 Mar",
        "101": "lame, UK 0 to 3: 2 on Sat 28 Mar",
    }


def test_the_latest_score_counts_and_none_that_is_too_old_or_of_a_later_day(house, visit):
    better, old, future = (make_cow(house.farm, number) for number in "123")
    scored(house, better, 3, 9)
    scored(house, better, 1, 2)
    scored(house, old, 3, 29)
    scored(house, house.cow, 2, 28)
    word = ScoringWord(DAY + timedelta(days=1), MobilityScale.UK, [CowScore(future.pk, 3)])
    note_scores(farm=house.farm, word=word, at=LATER + timedelta(days=2), by=house.client)
    assert set(why(visit)) == {"101"}


def test_a_score_of_the_day_of_her_last_trim_or_before_counts_no_more(house, visit):
    before = under_way(house.farm, house.van, LATER - timedelta(days=10))
    put_down(before, house.cow, trimmed_foot())
    finish(before, house.trimmer)
    scored(house, house.cow, 3, 10)
    assert why(visit) == {}
    scored(house, house.cow, 2, 9)
    assert set(why(visit)) == {"101"}


def test_a_block_alone_is_due_and_a_re_check_is_said_once(house):
    before = under_way(house.farm, house.van)
    trim = put_down(before, house.cow, blocked_foot())
    finish(before, house.trimmer)
    visit = planned(house.farm, house.van, LATER)
    assert why(visit) == {"101": "left hind: wooden block on inner claw; sole ulcer"}
    trim.rechecks_booked.within(house.scope).update(closed_on=DAY)
    assert why(visit) == {"101": "left hind: wooden block on inner claw"}


def test_what_another_visit_is_to_see_to_does_not_lengthen_this_one(house):
    before = under_way(house.farm, house.van)
    put_down(before, house.cow, blocked_foot())
    finish(before, house.trimmer)
    (gathered,) = gather_farm_rechecks(farm=house.farm, today=DAY, at=NOON)
    asked = named(make_cow(house.farm, "7"))
    visit = planned(house.farm, house.van, LATER, reason=VisitReason.URGENT, head_count=1, cows=[asked])
    assert set(why(visit)) == {"7"}
    assert set(why(visit, 2)) == {"101", "7"}
    assert set(why(gathered, 0)) == {"101"}


def test_the_farms_own_rules_are_gone_by(house, visit):
    make_cow(house.farm, "7", calved_on=DAY - timedelta(days=70))
    assert why(visit) == {"7": "70 days in milk"}
    choose_draft_rules(farm=house.farm, rule_set="round", own={"milk_from": 71}, at=NOON, by=house.office)
    assert why(visit) == {}


@pytest.mark.parametrize("reason", [VisitReason.URGENT, VisitReason.RECHECK])
def test_an_urgent_visit_or_a_re_check_is_filled_with_no_sound_cow(house, reason):
    make_cow(house.farm, "7", calved_on=DAY - timedelta(days=70))
    scored(house, house.cow, 2, 3)
    assert set(why(planned(house.farm, house.van, LATER, reason=reason, head_count=5))) == {"101"}
    assert set(why(planned(house.farm, house.van, LATER + timedelta(days=1), head_count=5))) == {"101", "7"}


def test_a_struck_cow_is_on_no_list_not_even_at_the_crush(house, visit):
    scored(house, house.cow, 3, 3)
    assert [line.number for line in crush_list(visit)] == ["101"]
    strike_cow(visit=visit, cow=house.cow, why="the vet has seen her", at=NOON, by=house.client)
    assert crush_list(visit) == []


def test_cows_of_other_farms_and_those_that_left_are_none_of_it(house, visit):
    there = make_farm(house.business, "High Croft", by=house.owner)
    scored(house, make_cow(there, "9"), 3, 1)
    gone = make_cow(house.farm, "8")
    scored(house, gone, 3, 1)
    gone.status = "sold"
    gone.save()
    assert why(visit) == {}


def test_thirty_cows_take_as_many_questions_as_three(house, visit):
    gather_draft(visit)
    counts = []
    for cows in (3, 27):
        for number in range(cows):
            make_cow(house.farm, f"{cows}{number}", calved_on=DAY - timedelta(days=70))
        with CaptureQueriesContext(connection) as asked:
            gather_draft(visit)
        counts.append(len(asked))
    assert counts[0] == counts[1] <= 8
