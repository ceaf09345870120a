from datetime import date, timedelta

import pytest

from visits.domain.feet import Claw, Foot, ZoneMap
from visits.domain.herd.facts import Calved, CowLife, CowSeen, FootSeen, HerdFacts, LesionSeen
from visits.domain.herd.intervals import wilson
from visits.domain.herd.lesion_families import LesionFamily
from visits.domain.herd.lesions_by import (
    DAYS_IN_MILK_LABELS,
    PARITIES,
    SEASONS,
    ZoneCount,
    by_claw,
    by_days_in_milk,
    by_foot,
    by_parity,
    by_season,
    by_zone,
    days_in_milk_group,
    parity_group,
    season_of,
)
from visits.domain.lesions import DDStage, LesionCode
from visits.domain.visit_states import VisitReason

DAY = date(2026, 3, 2)
ULCER = LesionSeen(LesionCode.SU, Claw.LATERAL, 4)
WARTS = LesionSeen(LesionCode.DD, Claw.SKIN, 10, dd_stage=DDStage.M2)
HEALTHY = LesionSeen(LesionCode.DD, Claw.SKIN, 10, dd_stage=DDStage.M0)


def look(cow, *lesions, day=DAY, foot=Foot.LEFT_HIND, bare=()):
    feet = (FootSeen(foot, lesions), *(FootSeen(other) for other in bare))
    return CowSeen(cow, day, 1, VisitReason.ROUTINE, feet)


def herd(*lives):
    return HerdFacts(DAY, lives, ())


def cow(number, *calvings):
    return CowLife(number, str(number), date(2020, 1, 1), calvings=calvings)


def counts(groups):
    return {each.group: (each.cows, each.seen) for each in groups if each.seen}


def test_cows_are_parted_by_the_lactation_they_were_in_that_day():
    calved = DAY - timedelta(days=100)
    facts = herd(*(cow(n, Calved(calved, n or None)) for n in range(7)))
    found = by_parity(facts, [look(n, *([ULCER] if n % 2 else [])) for n in range(8)])
    assert counts(found) == {
        "1": (1, 1),
        "2": (0, 1),
        "3": (1, 1),
        "4 and more": (1, 3),
        "not known": (1, 2),
    }
    assert tuple(each.group for each in found) == PARITIES
    assert found[3].interval == wilson(1, 3).times(100)


@pytest.mark.parametrize(
    ("days", "group"),
    [
        (0, "0 to 60"),
        (60, "0 to 60"),
        (61, "61 to 150"),
        (150, "61 to 150"),
        (151, "151 to 305"),
        (306, "306 and more"),
        (-1, "not known"),
    ],
)
def test_days_in_milk_run_from_the_calving_before_the_look(days, group):
    facts = herd(cow(1, Calved(DAY - timedelta(days=days), 2)))
    assert days_in_milk_group(facts, look(1)) == group


def test_a_later_calving_does_not_change_what_she_was_when_she_was_seen():
    facts = herd(cow(1, Calved(date(2025, 1, 1), 1), Calved(date(2026, 1, 1), 2)))
    before, after = look(1, ULCER, day=date(2025, 12, 31)), look(1, day=date(2026, 1, 1))
    assert (parity_group(facts, before), parity_group(facts, after)) == ("1", "2")
    assert counts(by_parity(facts, [before, after])) == {"1": (1, 1), "2": (0, 1)}
    assert counts(by_days_in_milk(facts, [before, after])) == {"306 and more": (1, 1), "0 to 60": (0, 1)}


def test_a_group_in_which_nobody_was_seen_has_no_rate():
    empty = by_days_in_milk(herd(), [])
    assert tuple(each.group for each in empty) == DAYS_IN_MILK_LABELS
    assert {(each.seen, each.per_100, each.interval) for each in empty} == {(0, None, None)}


@pytest.mark.parametrize(
    ("month", "season"), [(12, 0), (2, 0), (3, 1), (5, 1), (6, 2), (8, 2), (9, 3), (11, 3)]
)
def test_seasons_are_quarters_that_begin_in_december(month, season):
    assert season_of(date(2026, month, 1)) == SEASONS[season]


def test_a_cow_seen_twice_in_a_season_is_one_cow():
    looks = [look(1), look(1, ULCER, day=DAY + timedelta(days=30)), look(1, day=DAY + timedelta(days=150))]
    assert counts(by_season(looks)) == {"Mar to May": (1, 1), "Jun to Aug": (0, 1)}


def test_only_the_lesion_asked_for_counts():
    looks = [look(1, ULCER), look(2, WARTS), look(3, HEALTHY)]
    assert counts(by_season(looks, LesionFamily.INFECTIOUS)) == {"Mar to May": (1, 3)}
    assert counts(by_season(looks, LesionCode.U)) == {"Mar to May": (1, 3)}
    assert counts(by_season(looks)) == {"Mar to May": (2, 3)}


def test_by_foot_only_cows_whose_foot_was_lifted_are_counted():
    looks = [look(1, ULCER, bare=[Foot.RIGHT_HIND]), look(2), look(3, ULCER, foot=Foot.RIGHT_HIND)]
    found = {each.foot: (each.cows, each.seen) for each in by_foot(looks)}
    assert found == {
        Foot.LEFT_HIND: (1, 2),
        Foot.RIGHT_HIND: (1, 2),
        Foot.LEFT_FORE: (0, 0),
        Foot.RIGHT_FORE: (0, 0),
    }


def test_by_claw_outer_inner_and_skin_are_told_apart():
    looks = [look(1, ULCER, WARTS), look(2, ULCER), look(3, HEALTHY)]
    found = {each.claw: (each.cows, each.seen) for each in by_claw(looks) if each.foot is Foot.LEFT_HIND}
    assert found == {Claw.LATERAL: (2, 3), Claw.MEDIAL: (0, 3), Claw.SKIN: (1, 3)}
    assert all(each.per_100 is None for each in by_claw(looks) if each.foot is Foot.LEFT_FORE)


def test_places_are_counted_by_cows_and_one_that_was_not_noted_stays_so():
    unplaced = LesionSeen(LesionCode.SH, Claw.LATERAL)
    looks = [look(1, ULCER, unplaced), look(1, ULCER), look(2, ULCER, WARTS), look(3, HEALTHY)]
    assert by_zone(looks) == (
        ZoneCount(Foot.LEFT_HIND, Claw.LATERAL, 4, ZoneMap.ILC, 2),
        ZoneCount(Foot.LEFT_HIND, Claw.LATERAL, None, ZoneMap.ILC, 1),
        ZoneCount(Foot.LEFT_HIND, Claw.SKIN, 10, ZoneMap.ILC, 1),
    )
    assert by_zone(looks, LesionCode.DD)[0].zone == 10
