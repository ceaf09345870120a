import numpy as np
import pytest
from scipy import special

from visits.domain.herd.shrunken_rates import HerdCount, herds_together, shrunken_rates

HERDS = [HerdCount(12, 100), HerdCount(30, 150), HerdCount(4, 80), HerdCount(3, 6), HerdCount(20, 140)]


def test_a_herd_is_pulled_to_the_common_mean_the_more_the_fewer_its_cows():
    found = shrunken_rates(HERDS)
    pulled = [abs(rate.share - rate.raw) for rate in found]
    assert max(pulled) == pulled[3]
    assert pulled[3] > 5 * pulled[1]
    assert all(rate.interval.low < rate.share < rate.interval.high for rate in found)


def test_mean_and_chance_are_those_of_a_much_finer_grid_laid_once():
    """A second road to the same integral: one fixed grid, ten times as many cells, nothing left out."""
    mean, spread = np.meshgrid((np.arange(800) + 0.5) / 800, (np.arange(80) + 0.5) / 80, indexing="ij")
    precision = 1 / spread**2 - 1
    a, b = mean * precision, (1 - mean) * precision
    logs = sum(special.betaln(a + h.cows, b + h.seen - h.cows) - special.betaln(a, b) for h in HERDS)
    weights = np.exp(logs - logs.max())
    weights /= weights.sum()
    together = herds_together(HERDS)
    first = HERDS[0]
    share = (weights * (a + first.cows) / (a + b + first.seen)).sum()
    below = (weights * special.betainc(a + first.cows, b + first.seen - first.cows, 0.1)).sum()
    assert together.common_mean == pytest.approx((weights * mean).sum(), abs=1e-3)
    assert together.share_of(0).mean == pytest.approx(share, abs=1e-4)
    assert together.share_of(0).chance_below(0.1) == pytest.approx(below, abs=1e-3)


def test_a_herd_of_which_nothing_was_seen_is_as_unsure_as_one_more_herd():
    together = herds_together([*HERDS, HerdCount(0, 0)])
    assert together.share_of(5).interval() == together.usual_herd().interval()
    assert shrunken_rates([*HERDS, HerdCount(0, 0)])[5].raw is None


def test_a_herd_beside_the_others_differs_by_its_share_less_their_mean():
    together = herds_together(HERDS)
    beside = together.beside_others(1)
    others = np.mean([together.share_of(herd).mean for herd in (0, 2, 3, 4)])
    assert beside.mean == pytest.approx(others, abs=0.003)
    middle = together.share_of(1).mean - others
    assert beside.difference.low < middle < beside.difference.high
    assert together.beside_others(1) == beside


def test_a_herd_of_which_nothing_was_seen_is_none_of_the_others():
    with_empty, without = herds_together([*HERDS, HerdCount(0, 0)]), herds_together(HERDS)
    assert with_empty.beside_others(0).mean == pytest.approx(without.beside_others(0).mean, abs=0.003)


@pytest.mark.parametrize("counts", [HERDS[:1], [HERDS[0], HerdCount(0, 0)], []])
def test_a_single_herd_has_no_common_mean_to_be_pulled_to(counts):
    assert shrunken_rates(counts) is None
    assert herds_together(counts) is None


def test_herds_without_a_single_case_stay_above_nought_and_unsure():
    found = shrunken_rates([HerdCount(0, 50)] * 4)
    assert 0 < found[0].share < 0.02
    assert found[0].interval.high > 0.01


def test_counts_that_cannot_be_are_refused():
    with pytest.raises(ValueError, match="7 of 6"):
        herds_together([*HERDS, HerdCount(7, 6)])
