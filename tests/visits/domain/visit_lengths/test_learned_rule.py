import math
from dataclasses import replace
from functools import cache, partial

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.visits.domain.visit_lengths.made_history import BROUGHT, ON_SITE, made_history
from visits.domain.visit_length import FarmSetup, LengthFigures, expected_length
from visits.domain.visit_lengths.finished_visit import Asked
from visits.domain.visit_lengths.learn_lengths import fit_rule
from visits.domain.visit_lengths.learned_rule import TAIL, likely_length, usual_rule, with_shape
from visits.domain.visit_lengths.spread_shape import SpreadShape

FIGURES = LengthFigures()


@cache
def learned():
    return fit_rule(made_history(visits=200)[0], FIGURES)


def asked(cows=20, lame=2, farm=1, setup=BROUGHT, van=1):
    return Asked(farm, van, setup, cows, lame)


@given(cows=st.integers(1, 80), lame=st.integers(0, 20), level=st.integers(0, 3), on_site=st.booleans())
def test_before_anything_was_seen_the_length_is_the_planning_figures(cows, lame, level, on_site):
    setup, lame = FarmSetup(crush_on_site=on_site, hygiene_level=level), min(lame, cows)
    told = likely_length(usual_rule(FIGURES), asked(cows, lame, setup=setup))
    assert told.minutes == pytest.approx(
        expected_length(FIGURES, setup, head_count=cows, corrective_count=lame).minutes
    )
    assert told.visits_in_all == 0


@pytest.mark.parametrize("made", [partial(usual_rule, FIGURES), learned], ids=["usual", "learned"])
@given(cows=st.integers(1, 80), lame=st.integers(0, 20), more=st.integers(1, 20), farm=st.integers(1, 14))
def test_more_cows_never_take_less_time_and_the_spread_is_positive(made, cows, lame, more, farm):
    rule, lame = made(), min(lame, cows)
    few, many = (likely_length(rule, asked(count, lame, farm)) for count in (cows, cows + more))
    assert few.minutes <= many.minutes
    assert few.spread > 0
    assert few.low <= few.minutes <= few.high


@given(cows=st.integers(1, 80), lame=st.integers(0, 79))
def test_a_farm_never_seen_is_told_with_more_doubt_than_one_known_well(cows, lame):
    lame = min(lame, cows)
    known, stranger = (likely_length(learned(), asked(cows, lame, farm)) for farm in (1, 99))
    noise = (
        TAIL**2 * learned().variances.noise(known.minutes),
        TAIL**2 * learned().variances.noise(stranger.minutes),
    )
    assert stranger.spread**2 - noise[1] > known.spread**2 - noise[0]


def test_a_farm_that_ever_takes_longer_is_told_longer():
    history, own = made_history(visits=300)
    rule = fit_rule(history, FIGURES)
    slow, quick = max(own, key=own.get), min(own, key=own.get)
    told = {farm: likely_length(rule, asked(farm=farm, van=1 + farm % 2)).minutes for farm in (slow, quick)}
    assert told[slow] - told[quick] == pytest.approx(20 * (own[slow] - own[quick]), rel=0.25)


def test_the_parts_add_up_to_the_minutes_and_are_in_words():
    told = likely_length(learned(), asked(20, 2, setup=ON_SITE))
    assert sum(minutes for _, minutes in told.parts) == pytest.approx(told.minutes)
    assert "setting up" in dict(told.parts)
    assert any("cows to trim" in words for words, _ in told.parts)


def test_the_shape_of_the_errors_moves_the_span_and_not_the_minutes():
    long_tail = SpreadShape((-0.5, 0.0, 3.0))
    plain = likely_length(learned(), asked())
    bent = likely_length(with_shape(learned(), long_tail, 0.1), asked())
    assert bent.minutes == plain.minutes
    assert bent.high > plain.high
    assert bent.low > plain.low


def test_a_cow_takes_a_minute_at_least_whatever_was_learned():
    wild = replace(learned(), mean=[-50.0 for _ in learned().mean])
    assert likely_length(wild, asked(10, 0)).minutes >= 10
    assert math.isfinite(likely_length(wild, asked(10, 0)).spread)
