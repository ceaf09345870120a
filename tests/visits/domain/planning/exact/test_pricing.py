import pytest

from tests.visits.domain.planning.exact.priced_days import reduced
from tests.visits.domain.planning.hand_made import board, job, shift, week
from visits.domain.planning.exact import pricing
from visits.domain.planning.exact.pricing import Pricing, Way
from visits.domain.planning.exact.time_left import TimeLeft

PRICES = [9_000.0, 7_000.0, 1_000.0]


@pytest.fixture
def made():
    return board(
        week(job("a"), job("b", "far"), job("c", "middle"), shifts=[shift(), shift(id="s2", cost_fixed=50)])
    )


def best(made, way, most=10, limits=(-1e-6, -1e-6), seconds=20):
    return Pricing(made).best_days(PRICES, limits, most, way, TimeLeft(seconds))


def test_the_least_is_proven_and_days_come_with_their_exact_cost(made):
    found = best(made, Way.BEST)
    for shift_at, each in enumerate(found):
        assert each.whole
        assert each.least == pytest.approx(
            min(c for (s, _), c in reduced(made, PRICES).items() if s == shift_at)
        )
        for day in each.days:
            assert day.shift == shift_at
            assert day.cost == pytest.approx(made.cost(day.shift, day.order))


def test_every_set_below_its_limit_is_listed_once(made):
    limits = (-2000.0, -3000.0)
    found = best(made, Way.EVERY, limits=limits)
    for shift_at, each in enumerate(found):
        listed = sorted(sorted(day.order) for day in each.days)
        below = [
            sorted(jobs)
            for (s, jobs), cost in reduced(made, PRICES).items()
            if s == shift_at and cost < limits[s]
        ]
        assert listed == sorted(below)
        assert listed


def test_the_quick_way_proves_a_bound_but_not_the_least(made):
    for exact, quick in zip(best(made, Way.BEST), best(made, Way.QUICK), strict=True):
        assert not quick.whole
        assert quick.least <= exact.least + 1e-6
        assert quick.days


def test_no_more_days_than_asked_for_the_cheapest_first(made):
    for each in best(made, Way.EVERY, most=2, limits=(1e9, 1e9)):
        costs = [day.cost - sum(PRICES[job] for job in day.order) for day in each.days]
        assert len(costs) == 2
        assert costs == sorted(costs)


def test_nothing_below_the_limit_is_proven_as_such(made):
    for each in best(made, Way.BEST, limits=(-1e9, -1e9)):
        assert each.whole
        assert each.days == []
        assert each.least >= -1e9


def test_without_time_nothing_is_proven(made):
    for each in best(made, Way.BEST, seconds=0):
        assert each.least == pytest.approx(each.least)
        assert not each.whole or each.days


def test_without_room_nothing_is_proven(made, monkeypatch):
    monkeypatch.setattr(pricing, "LABELS", 4)
    assert [each.whole for each in best(made, Way.BEST)] == [False, False]


def test_as_many_jobs_as_a_word_has_bits_are_told_apart():
    many = board(week(*(job(f"j{at}", minutes=400) for at in range(64))))
    prices = [0.0] * 62 + [50_000.0, 90_000.0]
    (found,) = Pricing(many).best_days(prices, [-1.0], 10, Way.EVERY, TimeLeft(20))
    assert [day.order for day in found.days] == [(63,), (62,)]
