from datetime import date

import pytest

from visits.domain.feet import Claw, Foot
from visits.domain.herd.facts import CowSeen, FootSeen, LesionSeen
from visits.domain.herd.intervals import wilson
from visits.domain.herd.lesion_families import LesionFamily
from visits.domain.herd.lesion_rates import cows_with, rate_of, rates_of_round
from visits.domain.herd.rounds import TrimRound
from visits.domain.lesions import DDStage, LesionCode
from visits.domain.visit_states import VisitReason

DAY = date(2026, 3, 2)


def cow(number, *codes, stage=None):
    lesions = tuple(LesionSeen(LesionCode(code), Claw.LATERAL, dd_stage=stage) for code in codes)
    return CowSeen(number, DAY, 1, VisitReason.ROUTINE, (FootSeen(Foot.LEFT_HIND, lesions),))


def a_round(*seen, whole=True):
    return TrimRound(DAY, DAY, (1,), seen, 20, whole, "")


def test_a_rate_is_cows_with_it_of_cows_seen_with_its_interval():
    trimmed = a_round(cow(1, "SU", "SH"), cow(2, "SU", "SU"), cow(3), cow(4))
    found = rate_of(trimmed, LesionCode.SU)
    assert (found.what, found.cows, found.seen, found.herd, found.per_100) == ("sole ulcer", 2, 4, 20, 50.0)
    assert found.interval == wilson(2, 4).times(100)
    assert found.is_herd_rate


def test_the_rate_of_picked_cows_is_never_called_the_herds():
    assert not any(rate.is_herd_rate for rate in rates_of_round(a_round(cow(1, "SU"), whole=False)))


def test_kinds_count_in_their_parent_and_a_cow_once_in_each():
    rates = {
        rate.code: rate.cows for rate in rates_of_round(a_round(cow(1, "SU", "TU"), cow(2, "WLA"), cow(3)))
    }
    assert rates == {
        None: 2,
        LesionFamily.INFECTIOUS: 0,
        LesionFamily.CLAW_HORN: 2,
        LesionFamily.OTHER: 0,
        LesionCode.U: 1,
        LesionCode.SU: 1,
        LesionCode.TU: 1,
        LesionCode.WL: 1,
        LesionCode.WLA: 1,
    }


def test_the_rates_come_with_the_whole_first_and_the_frequent_before_the_rare():
    rates = rates_of_round(a_round(cow(1, "AC", "DD"), cow(2, "DD"), cow(3)))
    assert [rate.code for rate in rates] == [None, *LesionFamily, LesionCode.DD, LesionCode.AC]


def test_a_lesion_nobody_had_is_told_as_none_of_those_seen():
    found = rate_of(a_round(cow(1), cow(2)), LesionCode.DD)
    assert (found.cows, found.per_100) == (0, 0.0)
    assert found.interval.high > 50


def test_a_round_without_cows_has_no_rate():
    found = rate_of(a_round(), None)
    assert (found.seen, found.per_100, found.interval) == (0, None, None)


def test_heel_horn_erosion_can_be_counted_with_the_horn():
    trimmed = a_round(cow(1, "HHE"))
    assert rate_of(trimmed, LesionFamily.INFECTIOUS).cows == 1
    moved = {r.code: r.cows for r in rates_of_round(trimmed, heel_erosion=LesionFamily.CLAW_HORN)}
    assert (moved[LesionFamily.INFECTIOUS], moved[LesionFamily.CLAW_HORN]) == (0, 1)


def test_healthy_skin_is_in_no_rate():
    rates = rates_of_round(a_round(cow(1, "DD", stage=DDStage.M0)))
    assert {rate.cows for rate in rates} == {0}
    assert len(rates) == 4


@pytest.mark.parametrize(("what", "cows"), [(None, 1), (LesionCode.SU, 1), (LesionCode.DD, 0)])
def test_a_cow_seen_twice_is_one_cow(what, cows):
    assert cows_with([cow(1, "SU"), cow(1, "SU"), cow(2)], what) == cows
