"""Rates of published arms and surveys through our own figures (fixtures/standards/published_arms.json)."""

from datetime import date

import pytest

from visits.domain.feet import Claw, Foot
from visits.domain.herd.facts import CowLife, CowSeen, FootSeen, HerdFacts, HerdScored, LesionSeen
from visits.domain.herd.intervals import share_of
from visits.domain.herd.lesion_rates import rate_of
from visits.domain.herd.mobility_prevalence import mobility_series
from visits.domain.herd.published_rates import GRIFFITHS, PUBLISHED_RATES
from visits.domain.herd.rounds import rounds_of
from visits.domain.lesions import LesionCode
from visits.domain.mobility import MobilityScale
from visits.domain.visit_states import VisitReason

DAY = date(2026, 3, 2)


def test_shares_come_out_to_the_printed_decimal(published):
    data = published("published_arms.json")
    for case in (*data["shares"], data["inspections"]):
        assert round(share_of(case["count"], case["of"]).per_100, 1) == case["percent"], case["what"]


def test_the_arms_of_a_trial_add_up_to_the_whole(published):
    *arms, whole = [case for case in published("published_arms.json")["shares"] if "Thomas" in case["what"]]
    assert (sum(arm["count"] for arm in arms), sum(arm["of"] for arm in arms)) == (
        whole["count"],
        whole["of"],
    )


def test_an_arm_gone_through_as_a_round_of_cows_gives_its_rate(published):
    arm = published("published_arms.json")["shares"][0]
    sore = FootSeen(Foot.LEFT_HIND, (LesionSeen(LesionCode.SU, Claw.LATERAL, 4),))
    seen = tuple(
        CowSeen(cow, DAY, 1, VisitReason.ROUTINE, (sore if cow < arm["count"] else FootSeen(Foot.LEFT_HIND),))
        for cow in range(arm["of"])
    )
    lives = tuple(CowLife(look.cow, str(look.cow), DAY) for look in seen)
    (trimmed,) = rounds_of(HerdFacts(DAY, lives, seen, herd_size=len(seen)))
    found = rate_of(trimmed, LesionCode.SU)
    assert found.is_herd_rate
    assert (round(found.per_100, 1), round(found.interval.low, 1), round(found.interval.high, 1)) == (
        arm["percent"],
        14.2,
        38.7,
    )


def test_lame_cows_of_sixty_one_farms_come_out_as_printed(published):
    case = published("published_arms.json")["lame"]
    scores = (2,) * case["count"] + (1,) * (case["of"] - case["count"])
    herd = HerdFacts(DAY, (), (), scorings=(HerdScored(DAY, MobilityScale.UK, scores, whole_herd=True),))
    (found,) = mobility_series(herd)[MobilityScale.UK]
    assert (round(found.per_100, 1), round(found.interval.low, 1), round(found.interval.high, 1)) == (
        case["percent"],
        case["low"],
        case["high"],
    )
    kept = next(rate for rate in PUBLISHED_RATES if rate.source is GRIFFITHS)
    assert (kept.count, kept.total, kept.per_100) == (case["count"], case["of"], case["percent"])


@pytest.mark.parametrize("rate", [rate for rate in PUBLISHED_RATES if rate.count is not None])
def test_a_published_rate_with_counts_is_what_its_counts_give(rate):
    assert round(100 * rate.count / rate.total, 1) == rate.per_100
