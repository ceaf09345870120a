from dataclasses import replace
from math import hypot

import pytest

from visits.domain.herd.against_others import (
    AgainstBusiness,
    AgainstPublished,
    HerdShare,
    NotCompared,
    Verdict,
    against_business,
    against_published,
    verdict_of,
)
from visits.domain.herd.intervals import Interval, newcombe, wilson
from visits.domain.herd.lesion_rates import LesionRate
from visits.domain.herd.published_rates import Per, PublishedRate, Source
from visits.domain.herd.shrunken_rates import HerdCount
from visits.domain.lesions import LesionCode

PAPER = Source("made-up", "A made-up paper", "GB", "10 herds, 1,000 cows", "2020")
DD = PublishedRate(PAPER, LesionCode.DD, Per.COWS_TRIMMED, 15.0, True, 1000)
HERE = HerdShare(LesionCode.DD, Per.COWS_TRIMMED, 30, 100, True)
OTHERS = [HerdCount(12, 100), HerdCount(15, 120), HerdCount(9, 80), HerdCount(20, 150), HerdCount(11, 90)]


def test_a_printed_count_is_compared_by_newcombes_interval():
    found = against_published(HERE, replace(DD, count=150, total=1000))
    assert found.difference == newcombe(30, 100, 150, 1000).times(100)
    assert (found.verdict, found.is_taken_as_exact) == (Verdict.HIGHER, False)


def test_a_printed_interval_adds_its_own_doubt():
    found = against_published(HERE, replace(DD, low=12.0, high=19.0, spread="95 % interval"))
    own = wilson(30, 100).times(100)
    assert found.difference.low == pytest.approx(15 - hypot(30 - own.low, 4))
    assert found.difference.high == pytest.approx(15 + hypot(own.high - 30, 3))
    assert not found.is_taken_as_exact


def test_a_bare_percentage_is_taken_as_it_stands_and_said_to_be():
    found = against_published(HERE, DD)
    own = wilson(30, 100).times(100)
    assert (found.difference.low, found.difference.high) == pytest.approx((own.low - 15, own.high - 15))
    assert found.is_taken_as_exact


def test_the_range_of_published_herds_is_told_where_it_is_printed_and_is_no_interval():
    found = against_published(HERE, replace(DD, low=0.0, high=69.0, spread="herds"))
    assert (found.herds.low, found.herds.high) == (0.0, 69.0)
    assert found.difference == against_published(HERE, DD).difference
    assert against_published(HERE, DD).herds is None


@pytest.mark.parametrize(
    ("here", "published", "words"),
    [
        ({"is_whole_herd": False}, {}, "picked"),
        ({}, {"whole_herd": False}, "picked out"),
        ({"cows": 0, "seen": 0}, {}, "No cows"),
        ({"what": LesionCode.U}, {}, "something else"),
        ({"per": Per.COWS_SCORED}, {}, "something else"),
        ({}, {"per": Per.LAMENESS_COW_YEARS}, "something else"),
    ],
)
def test_unlike_figures_are_not_compared_and_it_is_said_why(here, published, words):
    found = against_published(replace(HERE, **here), replace(DD, **published))
    assert isinstance(found, NotCompared)
    assert words in found.why


def test_a_paper_that_does_not_say_how_cows_came_is_still_compared():
    assert isinstance(against_published(HERE, replace(DD, whole_herd=None)), AgainstPublished)


def test_a_herd_that_stands_out_is_told_as_higher_than_the_business_mean():
    found = against_business(HERE, OTHERS)
    assert isinstance(found, AgainstBusiness)
    assert (found.verdict, found.herds) == (Verdict.HIGHER, 6)
    assert found.here.raw == 0.3
    assert found.mean < found.here.share < 0.3
    assert found.usual.low < found.mean < found.usual.high


def test_a_herd_like_the_others_is_not_told_apart():
    assert against_business(replace(HERE, cows=13), OTHERS).verdict is Verdict.NOT_TOLD_APART


@pytest.mark.parametrize("level", [0.95, 0.9875])
@pytest.mark.parametrize("herds", [5, 10, 20])
@pytest.mark.parametrize("cows", [[0], [0, 1, 2], [3]], ids=["none anywhere", "a few here and there", "few"])
def test_a_herd_without_a_case_is_not_told_lower_than_others_that_had_none_or_a_few(herds, cows, level):
    others = [HerdCount(cows[place % len(cows)], 80) for place in range(herds - 1)]
    found = against_business(replace(HERE, cows=0, seen=80), others, level)
    assert found.verdict is Verdict.NOT_TOLD_APART


def test_the_range_of_a_usual_herd_is_no_herds_own_figure():
    found = against_business(HERE, OTHERS)
    own = {count.cows / count.seen for count in OTHERS}
    assert not own & {found.usual.low, found.usual.high}


def test_with_too_few_herds_or_picked_cows_there_is_no_comparison():
    assert "4 other herds" in against_business(HERE, [*OTHERS[:3], HerdCount(0, 0)]).why
    assert isinstance(against_business(HERE, OTHERS[:4]), AgainstBusiness)
    assert "picked" in against_business(replace(HERE, is_whole_herd=False), OTHERS).why


@pytest.mark.parametrize(
    ("low", "high", "verdict"),
    [
        (1, 2, Verdict.HIGHER),
        (-2, -1, Verdict.LOWER),
        (-1, 1, Verdict.NOT_TOLD_APART),
        (0, 1, Verdict.NOT_TOLD_APART),
    ],
)
def test_a_difference_is_told_only_when_nought_is_left_out(low, high, verdict):
    assert verdict_of(Interval(low, high)) is verdict


def test_the_share_of_a_round_keeps_whether_it_was_the_whole_herd():
    rate = LesionRate("digital dermatitis", LesionCode.DD, 30, 100, 110, 30.0, None, True)
    assert HerdShare.of(rate) == HERE
    assert HERE.words == "digital dermatitis"
    assert replace(HERE, what=None, per=Per.COWS_SCORED).words == "lame cows"
