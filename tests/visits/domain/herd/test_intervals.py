import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from visits.domain.herd.intervals import (
    Interval,
    log_ratio,
    newcombe,
    normal_quantile,
    poisson_exact,
    share_of,
    wilson,
)

COUNTED = st.integers(1, 2000).flatmap(lambda n: st.tuples(st.integers(0, n), st.just(n)))


def test_a_share_is_told_with_its_count_and_its_bounds():
    found = share_of(11, 45)
    assert (found.count, found.total) == (11, 45)
    assert found.share == pytest.approx(0.2444, abs=1e-4)
    assert found.per_100 == pytest.approx(24.44, abs=1e-2)
    assert found.interval.low < found.share < found.interval.high
    assert found.per_100_interval == found.interval.times(100)


def test_when_no_cow_was_seen_nothing_is_claimed():
    found = share_of(0, 0)
    assert (found.share, found.per_100, found.interval, found.per_100_interval) == (None, None, None, None)


@pytest.mark.parametrize(("count", "total"), [(3, 2), (-1, 2), (1, 0)])
def test_counts_that_cannot_be_are_refused(count, total):
    with pytest.raises(ValueError, match="cannot be"):
        share_of(count, total)
    with pytest.raises(ValueError, match="cannot be"):
        wilson(count, total)


def test_an_interval_of_no_cows_is_refused():
    with pytest.raises(ValueError, match="no cows"):
        wilson(0, 0)
    with pytest.raises(ValueError, match="no cows"):
        newcombe(1, 2, 0, 0)


def test_cases_below_none_are_refused():
    with pytest.raises(ValueError, match="-1 cases cannot be"):
        poisson_exact(-1)


@pytest.mark.parametrize("level", [0.0, 1.0, 95])
def test_a_level_that_is_no_share_is_refused(level):
    with pytest.raises(ValueError, match="between 0 and 1"):
        wilson(1, 2, level)


@pytest.mark.parametrize(("ratio", "standard_error"), [(0.0, 1.0), (-1.0, 1.0), (1.0, -0.1)])
def test_a_ratio_without_a_logarithm_has_no_interval(ratio, standard_error):
    with pytest.raises(ValueError, match="no log interval"):
        log_ratio(ratio, standard_error)


def test_a_ratio_lies_in_the_middle_of_its_interval_by_factors():
    found = log_ratio(2.0, 0.5)
    assert math.sqrt(found.low * found.high) == pytest.approx(2.0)
    assert found.high / 2.0 == pytest.approx(math.exp(1.959963984540054 * 0.5))


def test_none_and_all_of_the_cows_reach_the_ends_exactly():
    assert wilson(0, 7).low == 0.0
    assert wilson(7, 7).high == 1.0
    assert poisson_exact(0).low == 0.0


def test_a_surer_interval_is_wider():
    assert wilson(3, 40, 0.99).low < wilson(3, 40, 0.95).low < wilson(3, 40, 0.8).low
    assert poisson_exact(3, 0.99).high > poisson_exact(3, 0.95).high
    assert wilson(3, 40, 0.8).level == 0.8
    assert normal_quantile(0.95) == pytest.approx(1.959963984540054)


def test_an_interval_holds_what_lies_in_it_its_ends_included():
    found = Interval(1.0, 2.0)
    assert [found.holds(value) for value in (0.99, 1.0, 2.0, 2.01)] == [False, True, True, False]


@given(COUNTED)
def test_the_interval_holds_the_share_within_0_and_1_and_mirrors(case):
    count, total = case
    found, mirrored = wilson(count, total), wilson(total - count, total)
    assert 0 <= found.low <= count / total <= found.high <= 1
    assert (mirrored.low, mirrored.high) == pytest.approx((1 - found.high, 1 - found.low))


@given(COUNTED, COUNTED)
def test_a_difference_turns_its_sign_when_the_groups_change_places(first, other):
    one, two = newcombe(*first, *other), newcombe(*other, *first)
    assert (two.low, two.high) == pytest.approx((-one.high, -one.low))
    assert -1 - 1e-12 <= one.low <= first[0] / first[1] - other[0] / other[1] <= one.high <= 1 + 1e-12
