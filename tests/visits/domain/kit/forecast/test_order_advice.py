from datetime import date, timedelta
from decimal import Decimal

import pytest

from tests.visits.domain.kit.forecast.made_models import MONDAY, always, booked, model
from visits.domain.kit.forecast.order_advice import (
    last_day_to_order,
    most_used_up,
    order_levels,
    packs_up_to,
    protected_until,
)
from visits.domain.kit.forecast.stock_ahead import OnOrder, StockAhead, SupplyTerms
from visits.domain.kit.forecast.use_ahead import use_ahead


def terms(pack=10, lead=4, review=7, service=0.95, shelf=None):
    return SupplyTerms(Decimal(pack), lead, review, service, shelf)


AHEAD = use_ahead(always(1), [], MONDAY, MONDAY + timedelta(days=13))


def test_an_order_lasts_until_that_of_the_next_look_can_be_here():
    """Ordered on Monday 7 December with four days: here on Friday the 11th; with six days not on Sunday but Monday."""
    assert protected_until(terms(), MONDAY) == date(2026, 12, 11)
    assert protected_until(terms(lead=6), MONDAY) == date(2026, 12, 14)


def test_safety_is_for_the_days_until_an_order_of_tomorrow_is_here_and_the_rest_is_as_expected():
    """Ordered on Tuesday 1 it is here on Monday 7: eight days of three cows; four more visits until Friday the 11th."""
    told = model(routine=0.5)
    visits = [booked(3, days=n) for n in range(12)]
    ahead = use_ahead(told, visits, MONDAY, MONDAY + timedelta(days=13))
    levels = order_levels(ahead, terms())
    until = ahead.until(date(2026, 12, 7))
    assert levels.point == until.quantile(0.95) > 12
    assert levels.level == levels.point + 6
    assert order_levels(ahead, terms(service=0.5)).point == until.quantile(0.5)


@pytest.mark.parametrize(("position", "packs"), [(29, 1), ("20.01", 1), (20, 1), (19, 2), (-5, 4), (99, 1)])
def test_whole_packs_up_to_the_level_one_at_least(position, packs):
    assert packs_up_to(AHEAD, Decimal(30), Decimal(position), terms()) == packs


def test_never_more_than_is_used_up_before_its_date_but_a_pack_where_it_is_needed():
    """One a day is used: with four days to come and thirty on the shelf, 35 from today on."""
    shelf = terms(shelf=30)
    assert most_used_up(AHEAD, shelf) == 35
    assert packs_up_to(AHEAD, Decimal(60), Decimal(3), shelf) == 3
    assert packs_up_to(AHEAD, Decimal(60), Decimal(3), terms()) == 6
    assert packs_up_to(AHEAD, Decimal(60), Decimal(33), shelf) == 1
    assert most_used_up(AHEAD, terms()) is None


def last_day(balance, *, orders=(), lost=0.0, **own):
    """Two a day; fourteen days told."""
    stock = StockAhead(Decimal(balance), tuple(OnOrder(date(2026, 12, d), Decimal(q)) for d, q in orders))
    ahead = use_ahead(always(2), [], MONDAY, MONDAY + timedelta(days=13))
    return last_day_to_order(ahead, stock, [lost] * 14, terms(**own))


def test_the_last_day_to_order_is_the_one_before_it_is_too_late():
    """Enough for twelve days, until Friday 11: what is ordered with four days on Tuesday 8 would come on Saturday."""
    assert last_day(28, lead=3) is None
    assert last_day(25, lead=2) == date(2026, 12, 9)
    assert last_day(24, lead=3) == date(2026, 12, 8)
    assert last_day(24, lead=4) == date(2026, 12, 7)
    # With one of them lost it lasts a day less, with nine until Sunday 6.
    assert last_day(24, lead=4, lost=1.0) == date(2026, 12, 6)
    assert last_day(24, lead=4, lost=9.0) == MONDAY


def test_what_is_too_late_already_is_ordered_today():
    assert last_day(0) == MONDAY
    assert last_day(-7) == MONDAY


def test_what_lacks_before_an_order_could_be_here_is_no_reason_when_enough_comes_then():
    """Nothing is there, thirty come on Friday as what is ordered today would."""
    assert last_day(0, orders=[(4, 30)]) is None
    assert last_day(0, orders=[(8, 30)]) == MONDAY


def test_a_chance_that_is_accepted_waits():
    told = model(routine=0.5)
    ahead = use_ahead(told, [booked(4, days=n) for n in range(10)], MONDAY, MONDAY + timedelta(days=13))
    stock, lost = StockAhead(Decimal(20)), [0.0] * 14
    bold, careful = (last_day_to_order(ahead, stock, lost, terms(lead=0, service=s)) for s in (0.5, 0.999))
    assert careful < (bold or date.max)


def test_what_is_accepted_is_the_mean_of_this_evening_s_chance_and_the_next_one_s():
    """Ordered on an evening with lead 0 it is there from the next day on: both chances can be read off the forecast."""
    ahead = use_ahead(
        model(routine=0.5), [booked(4, days=n) for n in range(10)], MONDAY, MONDAY + timedelta(days=13)
    )
    told = set()
    for balance in range(2, 24):
        stock = StockAhead(Decimal(balance))
        chances = [cells_above(ahead, number, balance) for number in range(14)]
        last = last_day_to_order(ahead, stock, [0.0] * 14, terms(lead=0))
        days = [MONDAY + timedelta(days=n) for n in range(13)]
        mean = {day: (chances[n] + chances[n + 1]) / 2 for n, day in enumerate(days) if day.weekday() < 4}
        due = [day for day, chance in mean.items() if chance > 0.05]
        if last is not None and last.weekday() < 4:
            assert last == min(due)
            told.add(last)
    assert len(told) > 4


def cells_above(ahead, number, balance):
    return ahead.until(MONDAY + timedelta(days=number)).chance_above(balance)
