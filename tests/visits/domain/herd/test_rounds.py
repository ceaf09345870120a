from datetime import date, timedelta

import pytest

from visits.domain.feet import Claw, Foot
from visits.domain.herd.facts import CowLife, CowSeen, FootSeen, HerdFacts, LesionSeen
from visits.domain.herd.rounds import RoundRule, rounds_of, whole_herd_rounds
from visits.domain.lesions import LesionCode
from visits.domain.visit_states import VisitReason

MONDAY = date(2026, 3, 2)
ROUTINE, URGENT, RECHECK = VisitReason
BARE, SORE = FootSeen(Foot.LEFT_HIND), FootSeen(Foot.LEFT_HIND, (LesionSeen(LesionCode.SU, Claw.LATERAL, 4),))


def looks(cows, days=0, reason=ROUTINE, feet=(BARE,)):
    day = MONDAY + timedelta(days=days)
    return [CowSeen(cow, day, 100 + days, reason, feet) for cow in cows]


def herd(*seen, size=20, known=20):
    lives = tuple(CowLife(cow, str(cow), MONDAY - timedelta(days=400)) for cow in range(known))
    ordered = sorted(seen, key=lambda look: look.day)
    return HerdFacts(MONDAY + timedelta(days=400), lives, tuple(ordered), herd_size=size)


def test_visits_within_the_gap_are_one_round_in_which_each_cow_stands_once():
    facts = herd(*looks(range(10)), *looks(range(8, 16), 14))
    (found,) = rounds_of(facts)
    assert (found.first, found.last) == (MONDAY, MONDAY + timedelta(days=14))
    assert found.visits == (100, 114)
    assert sorted(look.cow for look in found.seen) == list(range(16))
    assert (found.cows, found.herd) == (16, 20)


def test_a_visit_one_day_past_the_gap_begins_another_round():
    first, second = rounds_of(herd(*looks(range(10)), *looks(range(8, 16), 15)))
    assert (first.cows, second.cows) == (10, 8)
    assert second.first == MONDAY + timedelta(days=15)


def test_a_farm_visited_every_week_does_not_become_one_endless_round():
    facts = herd(*(look for week in range(20) for look in looks([week], 7 * week)))
    found = rounds_of(facts)
    assert [each.cows for each in found] == [6, 6, 6, 2]
    assert not any(each.is_whole_herd for each in found)


@pytest.mark.parametrize(("cows", "whole"), [(14, False), (15, True), (20, True)])
def test_three_cows_in_four_speak_for_the_herd_and_fewer_do_not(cows, whole):
    (found,) = rounds_of(herd(*looks(range(cows))))
    assert found.is_whole_herd is whole
    assert found.why == f"{cows} of 20 cows seen, {'at least' if whole else 'under'} 75 %"


@pytest.mark.parametrize("reason", [URGENT, RECHECK])
def test_cows_picked_for_lameness_never_speak_for_the_herd_however_many(reason):
    (found,) = rounds_of(herd(*looks(range(20), reason=reason)))
    assert not found.is_whole_herd
    assert "picked" in found.why


def test_picked_cows_do_not_help_a_routine_round_over_the_mark():
    facts = herd(*looks(range(13)), *looks(range(13, 20), 3, URGENT, (SORE,)))
    routine, urgent = rounds_of(facts)
    assert (routine.cows, routine.is_whole_herd) == (13, False)
    assert (urgent.cows, urgent.is_whole_herd) == (7, False)
    assert whole_herd_rounds(facts) == ()


def test_of_two_looks_in_a_round_the_fuller_one_stands():
    all_four = tuple(FootSeen(foot) for foot in Foot)
    facts = herd(*looks([1], 0, ROUTINE, all_four), *looks([1], 2, ROUTINE, (SORE,)))
    (found,) = rounds_of(facts)
    assert found.seen[0].feet == all_four
    facts = herd(*looks([1]), *looks([1], 2, ROUTINE, (SORE,)))
    assert rounds_of(facts)[0].seen[0].feet == (SORE,)


def test_of_two_looks_that_are_alike_the_first_stands():
    (found,) = rounds_of(herd(*looks([1]), *looks([1], 2)))
    assert found.seen[0].day == MONDAY


def test_the_larger_of_told_and_known_is_the_herd():
    assert rounds_of(herd(*looks(range(15)), size=40, known=20))[0].herd == 40
    assert rounds_of(herd(*looks(range(15)), size=10, known=30))[0].herd == 30


def test_when_the_size_of_the_herd_is_not_known_no_round_speaks_for_it():
    (found,) = rounds_of(herd(*looks(range(15)), size=0, known=15))
    assert (found.herd, found.is_whole_herd) == (0, False)
    assert "not known" in found.why


def test_the_rule_can_be_moved():
    facts = herd(*looks(range(10)), *looks(range(10, 12), 3))
    assert len(rounds_of(facts, RoundRule(gap_days=2))) == 2
    assert rounds_of(facts, RoundRule(whole_herd_share=0.5))[0].is_whole_herd


def test_a_herd_that_was_never_seen_has_no_round():
    assert rounds_of(herd()) == ()
