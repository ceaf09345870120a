"""The bench in a small form: 400 shares and 300 differences; three standard errors of so few are 4 in 100."""

import pytest

from tests.bench.visits.bench_herd_shrinkage import AS_FOUND, check, coverage


def test_intervals_of_shares_and_differences_hold_the_truth_about_95_times_in_100():
    shares, differences = coverage(AS_FOUND, herds=4, told=400, seed=1)
    assert shares == pytest.approx(0.95, abs=0.04)
    assert differences == pytest.approx(0.95, abs=0.04)


@pytest.mark.parametrize(("share", "is_kept"), [(0.93, True), (0.97, True), (0.92, False), (0.98, False)])
def test_the_bench_raises_when_the_bar_is_missed(share, is_kept):
    if is_kept:
        check([0.95, share])
    else:
        with pytest.raises(AssertionError, match="95 % intervals"):
            check([0.95, share])
