from decimal import Decimal
from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.visits.domain.kit.forecast.by_enumeration import each_with_each, quantile
from visits.domain.kit.forecast.spread import Spread, cut, steps_within, summed, total

ONE = Decimal(1)
weights = st.lists(st.integers(0, 9), min_size=1, max_size=5).filter(any)


def spread_of(shares, step=ONE):
    return Spread(step, tuple(share / sum(shares) for share in shares))


def exact(shares, step=1):
    return {Fraction(at * step): Fraction(share, sum(shares)) for at, share in enumerate(shares)}


@given(st.lists(weights, min_size=1, max_size=4))
def test_a_sum_has_the_chances_of_every_case_gone_through(parts):
    told = total([spread_of(part) for part in parts], ONE)
    wanted = each_with_each(exact(part) for part in parts)
    for value in range(len(told.chances)):
        assert told.chances[value] == pytest.approx(float(wanted.get(Fraction(value), 0)), abs=1e-12)
    for level in (Fraction(1, 2), Fraction(4, 5), Fraction(19, 20)):
        assert told.quantile(float(level)) == quantile(wanted, level)


def test_mean_variance_quantile_and_chance_are_in_the_unit():
    spread = Spread(Decimal(40), (0.5, 0.25, 0.25))
    assert spread.mean == 30
    assert spread.variance == pytest.approx(0.5 * 900 + 0.25 * 100 + 0.25 * 2500)
    assert [spread.quantile(level) for level in (0, 0.5, 0.51, 0.75, 0.76, 1)] == [0, 0, 40, 40, 80, 80]
    assert spread.chance_above(0) == 0.5
    assert spread.chance_above(Decimal("39.9")) == 0.5
    assert spread.chance_above(40) == 0.25
    assert spread.chance_above(80) == 0
    assert spread.chance_above(-1) == 1


@given(weights)
def test_quantiles_never_fall_as_the_chance_rises(shares):
    told = [spread_of(shares).quantile(level / 50) for level in range(51)]
    assert told == sorted(told)


def test_a_quantile_is_no_step_too_high_for_a_rounding_of_floats():
    assert Spread(ONE, (0.1 + 0.2, 0.7)).quantile(0.3) == 0
    assert Spread(ONE, tuple([0.1] * 10)).quantile(0.8) == 7


def test_the_far_end_is_cut_where_it_can_be_no_matter_and_nothing_is_lost():
    cells = np.array([0.5, 0.5 - 2e-14, 1e-14, 1e-14])
    assert cut(cells).tolist() == [0.5, pytest.approx(0.5, abs=1e-15)]
    assert sum(cut(cells)) == 1
    assert cut(np.array([0.5, 0.5])).tolist() == [0.5, 0.5]
    assert summed(np.array([0.5, 0.5]), np.array([0.0, 1.0])).tolist() == [0, 0.5, 0.5]


def test_steps_that_fit():
    assert steps_within(Decimal("0.5"), Decimal("0.02")) == 25
    assert steps_within(0.07, Decimal("0.01")) == 7
    assert steps_within(Decimal("79.99"), Decimal(40)) == 1
    assert steps_within(Decimal("-0.01"), Decimal(40)) == -1


def test_nothing_is_surely_none():
    assert Spread.nothing().quantile(1) == 0
    assert Spread.nothing().chance_above(0) == 0


@pytest.mark.parametrize(
    ("step", "chances"), [(0, (1.0,)), (1, ()), (1, (0.5, 0.4)), (1, (1.5, -0.5)), (-1, (1.0,))]
)
def test_what_is_no_spread_is_refused(step, chances):
    with pytest.raises(ValueError, match=r"leads nowhere|sum to 1"):
        Spread(Decimal(step), chances)


def test_steps_that_differ_are_not_added_and_no_chance_is_beyond_one():
    with pytest.raises(ValueError, match="not added"):
        Spread.nothing(ONE).plus(Spread.nothing(Decimal(2)))
    with pytest.raises(ValueError, match="no chance"):
        Spread.nothing().quantile(1.1)
    assert Spread(ONE, (0.5, 0.5)).plus(Spread(ONE, (0.0, 1.0))).chances == (0.0, 0.5, 0.5)
