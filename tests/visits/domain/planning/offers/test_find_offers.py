"""All places, best first, each with what it adds."""

import pytest
from hypothesis import HealthCheck, given, settings

from tests.random_examples import examples
from tests.visits.domain.planning.hand_made import job, monday, shift, week, window
from tests.visits.domain.planning.offers.standing import by_hand, standing, standing_weeks
from visits.domain.planning.offers.find_offers import find_offers


def test_the_place_on_the_way_comes_first_and_says_what_it_adds():
    made, new = standing(week(job("a", "near"), job("c", "far"), job("new", "middle")), (0, 1))
    best, *_ = found = find_offers(made, new)
    assert best.place.order == (0, 2, 1)
    assert (best.added.work, best.added.metres, best.added.money) == (36_000, 0, 2400)
    assert [offer.added.weight for offer in found] == sorted(offer.added.weight for offer in found)


def test_a_van_that_would_have_stayed_in_has_its_price():
    made, new = standing(week(job("new"), shifts=[shift(cost_fixed=700)]), ())
    (only,) = find_offers(made, new)
    assert (only.added.money, only.added.metres) == (700 + 100 * 40 + 30 * 10, 30_000)


def test_a_promise_is_never_moved():
    promised = job("a", fixed={"shift": "mon", "start": monday("09:00")}, minutes=60)
    made, new = standing(week(promised, job("new", windows=[window("09:00", "10:30")])), (0,))
    assert find_offers(made, new) == []


def test_lateness_weighs_but_is_no_money():
    late = {"due": "2026-02-28", "late_cost_per_day": 300}
    made, new = standing(week(job("new", **late)), ())
    (only,) = find_offers(made, new)
    assert only.added.weight - only.added.money == 600


def test_a_round_that_breaks_a_rule_offers_nothing():
    made, new = standing(week(job("a", minutes=900), job("new", windows=[window("07:00", "09:00")])), (0,))
    assert find_offers(made, new) == []


@settings(
    max_examples=examples(150), suppress_health_check=[HealthCheck.filter_too_much, HealthCheck.too_slow]
)
@given(standing_weeks())
def test_the_places_are_those_of_re_timing_every_order(made):
    week_of, new = made
    best = {}
    for offer in find_offers(week_of, new):
        key = offer.place.shift, offer.place.order
        best[key] = min(offer.added.weight, best.get(key, offer.added.weight))
    assert best == pytest.approx(by_hand(week_of, new), abs=1e-6)
