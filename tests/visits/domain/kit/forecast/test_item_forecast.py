from datetime import date, timedelta
from decimal import Decimal
from itertools import pairwise

import pytest

from tests.visits.domain.kit.forecast.made_models import MONDAY, always, booked, model
from visits.domain.kit.forecast.item_forecast import cover_days, days_needed, forecast_item
from visits.domain.kit.forecast.stock_ahead import DatedLot, OnOrder, StockAhead, SupplyTerms
from visits.domain.kit.forecast.use_ahead import use_ahead

TERMS = SupplyTerms(Decimal(10), 4, 7, 0.95)
DAYS = 14


def ahead_of(told, visits=(), terms=TERMS, days=DAYS):
    return use_ahead(told, visits, MONDAY, MONDAY + timedelta(days=days_needed(terms, MONDAY, days) - 1))


def forecast(balance, *, told=None, visits=(), terms=TERMS, **stock):
    return forecast_item(
        5, ahead_of(told or always(2), visits, terms), StockAhead(Decimal(balance), **stock), terms, DAYS
    )


def test_sure_use_is_told_to_the_day():
    """Two a day from Monday 30 November; ordered today it is here on Friday, ordered on the 7th a week later."""
    told = forecast(15)
    assert told.consumable == 5
    assert told.here_on == date(2026, 12, 4)
    assert (told.expected, told.q50, told.q80, told.q95) == (10, 10, 10, 10)
    # Ordered tomorrow it would be here on Monday the 7th: sixteen; eight more until Friday the 11th.
    assert told.reorder_point == 16
    assert told.order_quantity == 10
    assert [day.run_out for day in told.days] == [0] * 7 + [1] * 7
    assert told.days[6].day == date(2026, 12, 6)
    assert (told.days[6].expected, told.days[6].q95) == (14, 14)
    # What is lacking on Monday the 7th must have come by the 4th: ordered today.
    assert told.order_by == MONDAY
    assert told.cover_days == 7.5
    assert (told.expiry_loss, told.visits) == (0, 9)


def test_what_is_on_order_counts_but_not_before_it_is_here():
    """Fifteen last until Sunday. Twenty that come on Tuesday leave Monday without: a pack from today is here before."""
    late = forecast(15, on_order=(OnOrder(date(2026, 12, 8), Decimal(20)),))
    assert [day.run_out for day in late.days] == [0] * 7 + [1] * 7
    assert (late.order_by, late.order_quantity) == (MONDAY, 10)
    soon = forecast(15, on_order=(OnOrder(date(2026, 12, 4), Decimal(20)),))
    assert (soon.order_by, soon.order_quantity, soon.days[-1].run_out) == (None, 0, 0)


def test_an_order_that_may_wait_for_the_review_days_is_told_by_its_day_alone():
    """Twenty-five are enough until Friday the 11th; ordered on Monday the 7th it is there then."""
    told = forecast(25)
    assert (told.order_by, told.order_quantity) == (date(2026, 12, 7), 0)
    sooner = forecast(23)
    assert (sooner.order_by, sooner.order_quantity) == (date(2026, 12, 6), 10)


def test_enough_for_long_needs_no_order():
    told = forecast(100)
    assert (told.order_quantity, told.order_by, told.days[-1].run_out) == (0, None, 0)
    assert told.cover_days == 50


def test_what_goes_past_its_date_is_foreseen_and_not_counted_on():
    """Thirty lie there; twenty of them keep until Wednesday, by when six are used: fourteen are lost, ten stay."""
    lots = (DatedLot(Decimal(20), date(2026, 12, 2)),)
    told = forecast(30, lots=lots)
    assert told.expiry_loss == 14
    assert [day.run_out for day in told.days][7:9] == [0, 1]
    assert told.order_quantity == 10
    assert forecast(30).order_quantity == 0
    far = forecast(30, lots=(DatedLot(Decimal(30), date(2027, 1, 1)),))
    assert far.expiry_loss == 0


def test_quantiles_lie_in_order_and_grow_from_day_to_day():
    told = forecast(3, told=model(), visits=[booked(4, days=n) for n in (0, 2, 3, 8)])
    for day in told.days:
        assert day.q50 <= day.q80 <= day.q95
    for before, after in pairwise(told.days):
        assert (before.q50, before.q80, before.q95) <= (after.q50, after.q80, after.q95)
        assert before.run_out <= after.run_out
        assert before.expected <= after.expected
    assert told.reorder_point >= told.q95


def test_a_higher_service_never_orders_less():
    levels = [
        forecast(
            0,
            told=model(),
            visits=[booked(4, days=n) for n in range(9)],
            terms=SupplyTerms(Decimal(1), 4, 7, s),
        )
        for s in (0.5, 0.8, 0.95, 0.999)
    ]
    assert [told.order_quantity for told in levels] == sorted(told.order_quantity for told in levels)
    assert levels[0].order_quantity < levels[-1].order_quantity


def test_a_use_ahead_that_is_told_for_more_days_says_the_same():
    stock = StockAhead(Decimal(19), lots=(DatedLot(Decimal(9), date(2026, 12, 3)),))
    visits = [booked(4, days=n) for n in range(9)]
    usual, longer = (
        forecast_item(5, ahead_of(model(), visits, TERMS, days), stock, TERMS, DAYS) for days in (DAYS, 40)
    )
    assert longer == usual


def test_days_of_cover():
    ahead = ahead_of(always(2, weekdays=range(5)))
    assert cover_days(ahead, Decimal(9)) == 4.5
    assert cover_days(ahead, Decimal(10)) == 5
    assert cover_days(ahead, Decimal(11)) == 7.5
    assert cover_days(ahead, Decimal(-1)) == 0
    assert cover_days(ahead, Decimal(30)) == pytest.approx(21)
    assert cover_days(ahead_of(model()), Decimal(9)) is None


def test_a_use_ahead_that_is_told_for_too_few_days_is_refused():
    short = use_ahead(always(2), [], MONDAY, MONDAY)
    with pytest.raises(ValueError, match="too few days"):
        forecast_item(5, short, StockAhead(Decimal(1)), TERMS, DAYS)
