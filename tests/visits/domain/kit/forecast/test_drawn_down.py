from datetime import timedelta
from decimal import Decimal
from fractions import Fraction
from itertools import pairwise, product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.visits.domain.kit.forecast.made_models import MONDAY, always, booked, model
from visits.domain.kit.forecast.drawn_down import drawn_down, gone_by_lots
from visits.domain.kit.forecast.stock_ahead import DatedLot, OnOrder, StockAhead
from visits.domain.kit.forecast.use_ahead import use_ahead

VISITS = [booked(2, days=0), booked(2, days=1), booked(1, days=3), booked(2, days=4)]
DAYS = 5


def day(n):
    return MONDAY + timedelta(days=n)


def ahead_of(visits=tuple(VISITS), told=None):
    return use_ahead(told or model(), visits, MONDAY, day(DAYS - 1))


def stock(balance, *, orders=(), lots=()):
    return StockAhead(
        Decimal(balance),
        tuple(OnOrder(day(n), Decimal(quantity)) for n, quantity in orders),
        tuple(DatedLot(Decimal(quantity), day(n)) for n, quantity in lots),
    )


def lived_through(ahead, lying):
    """Every course of use, unit by unit: each has a date or none, the oldest date is used first."""
    ways = [list(enumerate(map(Fraction, ahead.of_day(n).tolist()))) for n in range(DAYS)]
    out, lost = [Fraction(0)] * DAYS, [Fraction(0)] * DAYS
    for course in product(*ways):
        chance = Fraction(1)
        for _, own in course:
            chance *= own
        dated = [lot.expires_on for lot in lying.lots for _ in range(int(lot.quantity))]
        shelf = sorted(dated) + [None] * (int(lying.balance) - len(dated))
        is_out, thrown = False, 0
        for n, (wanted, _) in enumerate(course):
            fresh = [unit for unit in shelf if unit is None or unit >= day(n)]
            thrown += len(shelf) - len(fresh)
            shelf = fresh + [None] * sum(
                int(o.quantity) for o in lying.on_order if day(n - 1) == max(o.day, MONDAY)
            )
            shelf.sort(key=lambda unit: (unit is None, unit or MONDAY))
            is_out = is_out or wanted > len(shelf)
            shelf = [] if is_out else shelf[wanted:]
            over = sum(unit == day(n) for unit in shelf)
            out[n] += chance * is_out
            lost[n] += chance * (thrown + over)
    return out, lost


@pytest.mark.parametrize(
    "lying",
    [
        stock(0),
        stock(2),
        stock(3, orders=[(1, 1), (3, 2)]),
        stock(3, orders=[(-2, 1)]),
        stock(5, lots=[(1, 3)]),
        stock(5, lots=[(0, 1), (1, 1), (3, 3)]),
        stock(4, lots=[(-1, 2), (2, 2)], orders=[(1, 1)]),
        stock(6, lots=[(3, 2), (3, 2), (9, 2)]),
    ],
)
def test_running_out_and_what_is_lost_are_those_of_every_course_lived_through(lying):
    ahead = ahead_of()
    told, (out, lost) = drawn_down(ahead, lying, DAYS), lived_through(ahead, lying)
    assert told.run_out == pytest.approx([float(x) for x in out], abs=1e-9)
    assert told.lost == pytest.approx([float(x) for x in lost], abs=1e-9)


@settings(max_examples=25)
@given(st.integers(0, 9), st.lists(st.tuples(st.integers(0, 4), st.integers(1, 3)), max_size=2))
def test_more_stock_never_raises_the_chance_of_running_out(balance, orders):
    ahead = ahead_of()
    less, more = (drawn_down(ahead, stock(b, orders=orders), DAYS).run_out for b in (balance, balance + 1))
    assert all(a >= b - 1e-12 for a, b in zip(less, more, strict=True))
    assert all(later >= earlier for earlier, later in pairwise(less))


def test_a_stock_below_nought_has_run_out():
    assert drawn_down(ahead_of(), stock(-1), DAYS).run_out == (1.0,) * DAYS


def test_sure_use_runs_out_on_its_day_and_what_comes_that_day_is_too_late():
    ahead = ahead_of((), always(2))
    assert drawn_down(ahead, stock(5), DAYS).run_out == (0, 0, 1, 1, 1)
    assert drawn_down(ahead, stock(5, orders=[(2, 9)]), DAYS).run_out == (0, 0, 1, 1, 1)
    assert drawn_down(ahead, stock(5, orders=[(1, 9)]), DAYS).run_out == (0,) * DAYS


def test_lots_never_hold_more_than_lies_there():
    lying = stock(4, lots=[(3, 5), (1, 2)])
    assert gone_by_lots(lying) == [(day(1), Decimal(2)), (day(3), Decimal(4))]
    assert gone_by_lots(stock(-3, lots=[(1, 2)])) == [(day(1), Decimal(0))]


def test_a_step_that_does_not_divide_the_stock_is_no_step_more():
    ahead = ahead_of((), always(2))
    assert drawn_down(ahead, stock("3.99"), DAYS).run_out == (0, 1, 1, 1, 1)
