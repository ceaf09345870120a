from datetime import timedelta
from fractions import Fraction

import numpy as np
import pytest

from tests.visits.domain.kit.forecast import by_enumeration as enum
from tests.visits.domain.kit.forecast.made_models import MONDAY, ROUTINE, booked, calls, model
from tests.visits.domain.kit.forecast.test_use_model import held_equal, users
from visits.domain.kit.forecast.open_work import OpenWork
from visits.domain.kit.forecast.use_ahead import use_ahead

HALF = {0: 0.5, 1: 0.5}


def day(n):
    return MONDAY + timedelta(days=n)


def open_model(*within, weekdays=(0, 1, 2, 3, 4)):
    work = OpenWork(
        frozenset(weekdays), {ROUTINE: calls(*within, ratio=0.5)}, {ROUTINE: np.array([0.5, 0.5])}
    )
    return model(open_work=work)


def test_quantiles_over_the_days_are_those_of_every_case_gone_through():
    """Two visits of three and two cows and the open work of three days: 4 x 3 x 4 x 4 x 4 cases, in fractions."""
    told = open_model(0.25, 0.5, 0.5)
    ahead = use_ahead(told, [booked(3), booked(2, 1, days=2, farm=2)], MONDAY, day(2))
    size = {Fraction(0): Fraction(1, 2), Fraction(1): Fraction(1, 2)}
    quarter = enum.sum_of(enum.binomial(1, Fraction(1, 4)), size)
    half = enum.sum_of(enum.binomial(1, Fraction(1, 2)), size)
    rates = told.rates
    first = [users(rates.routine, 1, 3), quarter]
    last = [users(rates.routine, 2, 1), users(rates.corrective, 2, 1), half]
    held_equal(ahead.until(MONDAY), enum.each_with_each(first))
    held_equal(ahead.until(day(2)), enum.each_with_each([*first, half, *last]))


def test_days_beyond_those_told_are_working_days_without_a_visit():
    told = open_model(0.0, 0.5)
    short, long = (use_ahead(told, [booked(3)], MONDAY, day(n)) for n in (1, 19))
    for n in (1, 4, 6, 11, 19):
        assert short.until(day(n)).chances == pytest.approx(long.until(day(n)).chances, abs=1e-12)
        assert short.of_day(n).tolist() == pytest.approx(long.of_day(n).tolist())
    assert short.until(day(-1)).chances == (1.0,)


def test_nobody_works_on_a_day_off_but_a_booked_visit_counts():
    told = open_model(0.5)
    ahead = use_ahead(told, [booked(3, days=5)], MONDAY, day(6))
    assert ahead.of_day(5).tolist() == told.visit_cells(booked(3)).tolist()
    assert ahead.of_day(6).tolist() == [1.0]


def test_visits_before_today_are_over():
    told = open_model(0.0)
    assert use_ahead(told, [booked(3, days=-1)], MONDAY, MONDAY).until(MONDAY).chances == (1.0,)


def test_days_that_end_before_they_begin_are_refused():
    with pytest.raises(ValueError, match="end before"):
        use_ahead(open_model(0.0), [], MONDAY, day(-1))
