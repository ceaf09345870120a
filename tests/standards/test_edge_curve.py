"""Cows per edge held against a published example, and against lifelines on random edges with ties.

Published: Freireich et al. 1963, Blood 21:699, weeks in remission of 21 children on 6-MP. The product-limit values
stand in the textbooks that use it (Cox and Oakes 1984, Collett 2003). Times and values typed from memory; the values
are products of small fractions, written out here, so that a slip of memory would show.
"""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from lifelines import KaplanMeierFitter
from lifelines.utils import median_survival_times
from scipy.stats import CensoredData, ecdf

from tests.visits.domain.kit.some_edges import edges
from visits.domain.kit.edge_curve import edge_curve
from visits.domain.kit.edge_life import learn_lives

REMISSION = "6 6 6 6+ 7 9+ 10 10+ 11+ 13 16 17+ 19+ 20+ 22 23 25+ 32+ 32+ 34+ 35+"
PUBLISHED = {6: 0.857, 7: 0.807, 10: 0.753, 13: 0.690, 16: 0.627, 22: 0.538, 23: 0.448}
FRACTIONS = {6: 18 / 21, 7: 16 / 17, 10: 14 / 15, 13: 11 / 12, 16: 10 / 11, 22: 6 / 7, 23: 5 / 6}
NEAR = 1e-9


def test_the_published_product_limit_values_come_out():
    steps = edge_curve(edges(REMISSION)).steps
    assert {int(step.day): round(step.survival, 3) for step in steps} == PUBLISHED
    exact = np.cumprod(list(FRACTIONS.values()))
    assert [step.survival for step in steps] == pytest.approx(exact.tolist(), abs=1e-12)
    assert edge_curve(edges(REMISSION)).median.day == 23


_SOME = st.lists(st.tuples(st.integers(1, 12), st.booleans()), min_size=1, max_size=30)


@settings(max_examples=25)
@given(_SOME)
def test_share_interval_and_median_equal_lifelines(lives):
    told = edges(" ".join(f"{cows}{'' if is_dull else '+'}" for cows, is_dull in lives))
    curve = edge_curve(told)
    cows, is_dull = zip(*lives, strict=True)
    reference = KaplanMeierFitter().fit(cows, is_dull)
    bounds = reference.confidence_interval_
    for step in curve.steps:
        assert step.survival == pytest.approx(reference.predict(step.day), abs=NEAR)
        if step.survival > 0:
            assert (step.low, step.high) == pytest.approx(tuple(bounds.loc[step.day]), abs=NEAR)
    median = curve.median
    assert (median.day if median else np.inf) == reference.median_survival_time_
    if median and curve.steps[-1].survival > 0:
        low, high = median_survival_times(bounds).to_numpy()[0]
        assert (median.low or np.inf, median.high or np.inf) == (low, high)


def test_edges_that_all_still_cut_have_a_curve_without_a_step():
    curve = edge_curve(edges("5+ 9+ 9+ 20+"))
    reference = KaplanMeierFitter().fit([5, 9, 9, 20], [0, 0, 0, 0])
    assert (curve.steps, curve.median) == ((), None)
    assert curve.at(20).survival == reference.predict(20) == 1


def test_share_and_interval_equal_scipy_where_chances_are_reckoned_from():
    """A third reference; and the chances of the grinding plan are those of the same curve."""
    curve = edge_curve(edges(REMISSION))
    times = [(int(word.strip("+")), word.endswith("+")) for word in REMISSION.split()]
    sample = CensoredData([t for t, more in times if not more], right=[t for t, more in times if more])
    found = ecdf(sample).sf
    interval = found.confidence_interval(method="log-log")
    life = learn_lives(edges(REMISSION), 25).kinds["hoof_knife"]
    at = {value: n for n, value in enumerate(found.quantiles.tolist())}
    for step in curve.steps:
        assert found.probabilities[at[step.day]] == pytest.approx(step.survival, abs=NEAR)
        assert interval.low.probabilities[at[step.day]] == pytest.approx(step.low, abs=NEAR)
        assert interval.high.probabilities[at[step.day]] == pytest.approx(step.high, abs=NEAR)
        assert life.survival[int(step.day)] == pytest.approx(step.survival, abs=NEAR)
