from datetime import date, timedelta

import pytest

from visits.domain.herd.facts import CowSeen, HerdFacts, HerdScored
from visits.domain.herd.intervals import wilson
from visits.domain.herd.mobility_prevalence import mobility_prevalence, mobility_series
from visits.domain.mobility import MobilityScale
from visits.domain.visit_states import VisitReason

DAY = date(2026, 3, 10)
UK, SPRECHER = MobilityScale


def scored(*scores, day=DAY, scale=UK, whole=True):
    return HerdScored(day, scale, scores, whole)


def herd(*scorings, trimmed=0, days_before=0):
    day = DAY - timedelta(days=days_before)
    looks = tuple(CowSeen(cow, day, 1, VisitReason.ROUTINE) for cow in range(trimmed))
    return HerdFacts(DAY, (), looks, scorings=scorings)


@pytest.mark.parametrize(
    ("scale", "scores", "lame", "very"), [(UK, (0, 1, 2, 3), 2, 1), (SPRECHER, (1, 2, 3, 4, 5), 3, 2)]
)
def test_lame_cows_are_counted_on_the_scale_they_were_scored_on(scale, scores, lame, very):
    found = mobility_prevalence(herd(), scored(*scores, scale=scale))
    assert (found.lame, found.very_lame, found.scored) == (lame, very, len(scores))
    assert found.per_100 == pytest.approx(100 * lame / len(scores))
    assert found.interval == wilson(lame, len(scores)).times(100)


def test_two_scales_are_two_series_each_in_order_of_days():
    later = DAY + timedelta(days=90)
    series = mobility_series(herd(scored(2, day=later), scored(1, 3, scale=SPRECHER), scored(0)))
    assert {scale: [each.day for each in found] for scale, found in series.items()} == {
        UK: [DAY, later],
        SPRECHER: [DAY],
    }


def test_a_scoring_of_some_cows_or_of_none_says_nothing_of_the_herd():
    assert mobility_series(herd(scored(3, 3, whole=False), scored())) == {}


def test_an_empty_scoring_has_no_share():
    found = mobility_prevalence(herd(trimmed=3), scored())
    assert (found.per_100, found.interval, found.is_soon_after_trim) == (None, None, False)


@pytest.mark.parametrize(
    ("trimmed", "days_before", "counted", "flagged"),
    [(2, 0, 2, True), (2, 7, 2, True), (2, 8, 0, False), (1, 3, 1, False), (5, -1, 0, False)],
)
def test_a_scoring_in_the_week_after_a_trim_is_flagged(trimmed, days_before, counted, flagged):
    found = mobility_prevalence(herd(trimmed=trimmed, days_before=days_before), scored(*[0] * 20))
    assert (found.trimmed_before, found.is_soon_after_trim) == (counted, flagged)
