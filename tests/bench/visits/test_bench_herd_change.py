"""The bench in a small form: the bound is three standard errors of so few herds."""

from dataclasses import replace

import numpy as np
import pytest

from tests.bench.visits.bench_herd_change import (
    QUICK,
    SteadyHerd,
    check,
    delay_line,
    delays,
    steady_herds,
)
from visits.domain.herd.change_counts import Counting

FEW = replace(QUICK, draws=12)


@pytest.mark.parametrize(("counting", "rates"), [(Counting.OF_COWS_SEEN, 50), (Counting.OVER_COW_YEARS, 300)])
def test_steady_herds_are_flagged_about_as_often_as_their_charts_state(counting, rates):
    herds = list(steady_herds(counting, farms=4, rates=rates, seed=1, rule=FEW))
    measured, stated = (np.mean([getattr(herd, name) for herd in herds]) for name in ("flagged", "stated"))
    error = np.sqrt(stated * (1 - stated) / len(herds))
    assert 0.02 < stated < 0.25
    assert abs(measured - stated) < 3 * error


def test_a_doubled_rate_is_flagged_sooner_with_more_cows():
    few, many = (
        delays(Counting.OF_COWS_SEEN, np.full(10, cows), 0.1, 2.0, past=8, herds=60, seed=2)
        for cows in (60.0, 400.0)
    )
    assert sum(n == 1 for n in many) > 0.9 * len(many)
    assert sum(n == 1 for n in few) < 0.5 * len(few)
    assert "  1.0 " in delay_line(many)


def test_delays_that_never_end_are_told_as_such():
    assert delay_line([None, None, 3]).split() == [">12", "3.0", "0", "0", "33", "33"]


@pytest.mark.parametrize(("flagged", "is_kept"), [(10, True), (11, True), (12, False), (8, False)])
def test_the_bench_raises_when_the_flags_are_not_as_stated(flagged, is_kept):
    herds = [SteadyHerd(5.0, 0.1, number < flagged) for number in range(100)]
    if is_kept:
        check(herds)
    else:
        with pytest.raises(AssertionError, match=r"stated 0\.1000"):
            check(herds)
