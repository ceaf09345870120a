import pytest
from hypothesis import given
from hypothesis import strategies as st

from visits.domain.herd_figures import share_of_seen, wilson_interval


def test_a_share_is_told_with_the_cows_seen_and_the_herd():
    found = share_of_seen(11, 45, 193)
    assert (found.count, found.seen, found.herd) == (11, 45, 193)
    assert found.share == pytest.approx(0.2444, abs=1e-4)
    assert found.low < found.share < found.high


def test_when_no_cow_was_seen_nothing_is_claimed():
    found = share_of_seen(0, 0, 193)
    assert found.share is None
    assert (found.low, found.high) == (0.0, 1.0)


@pytest.mark.parametrize(("count", "seen"), [(3, 2), (-1, 2)])
def test_counts_that_cannot_be_are_refused(count, seen):
    with pytest.raises(ValueError, match="cannot be"):
        share_of_seen(count, seen, 100)


def test_an_interval_of_no_cows_is_refused():
    with pytest.raises(ValueError, match="no cows"):
        wilson_interval(0, 0)


@given(st.integers(1, 2000).flatmap(lambda n: st.tuples(st.integers(0, n), st.just(n))))
def test_the_interval_holds_the_share_within_0_and_1_and_mirrors(case):
    count, total = case
    low, high = wilson_interval(count, total)
    assert -1e-12 <= low <= count / total + 1e-12
    assert count / total - 1e-12 <= high <= 1 + 1e-12
    assert wilson_interval(total - count, total) == pytest.approx((1 - high, 1 - low))
