"""What the bench of the crush page makes of its figures; the page itself is timed by the bench alone."""

from dataclasses import replace

import pytest

from tests.bench.visits.bench_crush_taps import Timed, check
from tests.bench.visits.tap_times import share_within

QUICK = Timed(
    [16.0] * 95 + [300.0] * 5,
    [20.0] * 100,
    [60.0] * 100,
    ["300 ms"],
    [16.0],
    [1.2, 1.9, 2.4],
    [1.5, 2.2, 2.9],
)


def test_ninety_five_of_a_hundred_taps_are_within_the_time_that_is_told():
    assert share_within([float(number) for number in range(1, 101)]) == 95
    assert share_within([7.0]) == 7


def test_a_day_within_the_bars_passes():
    check(QUICK)


@pytest.mark.parametrize("worse", [{"to_paint": [16.0] * 94 + [101.0] * 6}, {"starts": [1.2, 2.1, 2.4]}])
def test_the_bench_raises_where_a_bar_is_missed(worse):
    with pytest.raises(AssertionError):
        check(replace(QUICK, **worse))
