from dataclasses import replace
from decimal import Decimal
from fractions import Fraction
from itertools import pairwise

import numpy as np
import pytest

from tests.visits.domain.kit.forecast import by_enumeration as enum
from tests.visits.domain.kit.forecast.made_models import (
    AS_BOOKED,
    NO_PART,
    RECHECK,
    ROUTINE,
    URGENT,
    booked,
    calls,
    model,
)
from visits.domain.kit.forecast.cow_rates import FarmCows
from visits.domain.kit.forecast.head_drift import HeadDrift
from visits.domain.kit.forecast.lattice import Cells
from visits.domain.kit.forecast.open_work import OpenWork

LEVELS = [Fraction(n, 40) for n in range(1, 40)]


def users(rate, farm, cows):
    """Chances of the number of using cows, by rising factorials in fractions."""
    a, b = (Fraction(x) for x in rate.curve(farm))
    return {Fraction(k): chance for k, chance in enumerate(enum.beta_binomial(cows, a, b))}


def sized(numbers, size):
    return enum.sum_of([numbers.get(Fraction(n), Fraction(0)) for n in range(len(numbers))], size)


def held_equal(spread, wanted):
    for at in range(len(spread.chances)):
        assert spread.chances[at] == pytest.approx(float(wanted.get(Fraction(at), 0)), abs=1e-9)
    assert sum(wanted.values()) == pytest.approx(1)
    for level in LEVELS:
        assert spread.quantile(float(level)) / spread.step == enum.quantile(wanted, level)


def test_a_visit_is_the_sum_over_its_cows_whatever_comes_of_it():
    """Of three booked two or three come; one or two steps each; a wash-down or a correction; it may be called off."""
    drift = HeadDrift(0.125, {0.0: 0.75, -1.0: 0.25}, {1.0: 1.0})
    parts = {**NO_PART, ROUTINE: Cells(-1, np.array([0.25, 0.5, 0.25]))}
    told = model(size=(0.0, 0.75, 0.25), heads=drift, per_visit=parts)
    size = {Fraction(1): Fraction(3, 4), Fraction(2): Fraction(1, 4)}
    cases = []
    for cows, chance in ((3, Fraction(3, 4)), (2, Fraction(1, 4))):
        number = enum.each_with_each(
            [users(told.rates.routine, 1, cows - 1), users(told.rates.corrective, 1, 1)]
        )
        cases.append((chance, sized(number, size)))
    part = {Fraction(n): Fraction(w, 4) for n, w in ((-1, 1), (0, 2), (1, 1))}
    made = enum.each_with_each([enum.mixed(cases), part])
    never_back = {}
    for value, chance in made.items():
        never_back[max(value, Fraction(0))] = never_back.get(max(value, Fraction(0)), 0) + chance
    wanted = enum.mixed([(Fraction(1, 8), {Fraction(0): Fraction(1)}), (Fraction(7, 8), never_back)])
    held_equal(told.of_visit(booked(3, 1)), wanted)


def test_lame_cows_of_an_urgent_visit_have_a_rate_of_their_own():
    told = model()
    held_equal(told.of_visit(booked(2, 2, reason=URGENT)), users(told.rates.urgent, 1, 2))
    held_equal(told.of_visit(booked(2, 2, reason=RECHECK)), users(told.rates.corrective, 1, 2))
    held_equal(told.of_visit(booked(2, 5, reason=RECHECK)), users(told.rates.corrective, 1, 2))


def test_a_farm_that_is_known_has_its_own_rate():
    told = model()
    rates = replace(told.rates, routine=replace(told.rates.routine, of_farm={7: FarmCows(30.0, 10.0)}))
    told = replace(told, rates=rates, _told={})
    assert told.of_visit(booked(4, farm=7)).mean > told.of_visit(booked(4, farm=8)).mean
    held_equal(told.of_visit(booked(4, farm=7)), users(rates.routine, 7, 4))


def test_more_cows_never_use_less_and_twice_as_many_use_twice_as_much():
    told = model()
    spreads = [told.of_visit(booked(heads)) for heads in range(12)]
    for fewer, more in pairwise(spreads):
        assert all(more.quantile(float(level)) >= fewer.quantile(float(level)) for level in LEVELS)
    assert spreads[10].mean == pytest.approx(2 * spreads[5].mean)
    assert spreads[0].chances == (1.0,)


def test_what_every_cow_or_no_cow_uses_needs_no_curve():
    assert model(routine=1.0).of_visit(booked(3)).chances == (0, 0, 0, 1)
    assert model(routine=0.0).of_visit(booked(3)).quantile(1) == 0


def test_a_part_of_the_visit_is_used_by_every_visit():
    parts = dict.fromkeys(NO_PART, Cells(2, np.ones(1)))
    told = model(routine=0.0, per_visit=parts, heads=AS_BOOKED, step="200")
    assert told.of_visit(booked(3)).quantile(1) == 400
    assert told.of_visit(booked(3)).mean == pytest.approx(400)


def test_an_open_day_uses_what_is_not_booked_yet():
    work = OpenWork(
        frozenset({0}), {ROUTINE: calls(0.0, 0.5, ratio=0.5)}, {ROUTINE: np.array([0.25, 0.5, 0.25])}
    )
    told = model(open_work=work)
    size = {Fraction(n): Fraction(w, 4) for n, w in enumerate((1, 2, 1))}
    wanted = enum.sum_of(enum.binomial(1, Fraction(1, 2)), size)
    held_equal(told.of_open_day(), wanted)
    held_equal(told.of_open_day(5), wanted)
    assert told.of_open_day(0).chances == (1.0,)
    assert told.of_open_day().step == Decimal(1)


def test_the_same_visit_is_told_once():
    told = model()
    first = told.visit_cells(booked(5))
    assert told.visit_cells(booked(5, days=3, van=2)) is first
    assert told.made_cells(booked(5)) is told.made_cells(booked(5))
