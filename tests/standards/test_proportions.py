"""Wilson intervals against published counts (source in fixtures/standards/proportions.json)."""

import pytest

from visits.domain.herd_figures import wilson_interval


def test_intervals_of_published_trials_come_out_to_the_printed_decimal(published):
    for case in published("proportions.json")["wilson_95"]:
        low, high = wilson_interval(case["count"], case["of"])
        assert (round(100 * low, 1), round(100 * high, 1)) == (case["low"], case["high"]), case["what"]


def test_the_interval_solves_its_own_defining_equation():
    """Wilson 1927: the bounds are the p with |count/n - p| = z sqrt(p (1 - p) / n)."""
    z = 1.959963984540054
    for bound in wilson_interval(23, 41):
        assert abs(23 / 41 - bound) == pytest.approx(z * (bound * (1 - bound) / 41) ** 0.5)
