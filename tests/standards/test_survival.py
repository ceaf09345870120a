"""Kaplan-Meier held against two reference libraries on open data sets that one of them ships.

Data: lifelines.datasets (lifelines 0.30, MIT), `load_waltons` (163 flies, 7 of them not followed to the end),
`load_rossi` (432 people, most of them never with the event), `load_larynx` (90 patients). Interval: log-log
Greenwood, the default of lifelines. Where the curve is at 0, lifelines writes 0 to 0 and we keep the upper bound
of the step before.
"""

import numpy as np
import pytest
from lifelines import KaplanMeierFitter
from lifelines.datasets import load_larynx, load_rossi, load_waltons
from lifelines.utils import median_survival_times
from statsmodels.duration.survfunc import SurvfuncRight

from visits.domain.herd.survival_curve import Followed, survival_curve

SETS = {
    "waltons": (load_waltons, "T", "E"),
    "rossi": (load_rossi, "week", "arrest"),
    "larynx": (load_larynx, "time", "death"),
}
NEAR = 1e-9


@pytest.fixture(scope="module", params=SETS)
def followed(request):
    load, days, event = SETS[request.param]
    table = load()
    return table[days].to_numpy(dtype=float), table[event].to_numpy(dtype=int)


def ours(followed, level=0.95):
    return survival_curve((Followed(days, bool(event)) for days, event in zip(*followed, strict=True)), level)


@pytest.mark.parametrize("level", [0.95, 0.8])
def test_survival_interval_and_numbers_at_risk_equal_lifelines_at_every_time(followed, level):
    curve, reference = ours(followed, level), KaplanMeierFitter(alpha=1 - level).fit(*followed)
    bounds, table = reference.confidence_interval_, reference.event_table
    assert [step.day for step in curve.steps] == list(table.index[table["observed"] > 0])
    for step in curve.steps:
        assert step.survival == pytest.approx(reference.predict(step.day), abs=NEAR)
        assert (step.at_risk, step.events) == tuple(table.loc[step.day, ["at_risk", "observed"]])
        if step.survival > 0:
            assert (step.low, step.high) == pytest.approx(tuple(bounds.loc[step.day]), abs=NEAR)
    for day in table.index:
        assert curve.at(day).survival == pytest.approx(reference.predict(day), abs=NEAR)


def test_the_median_and_its_interval_equal_lifelines(followed):
    curve, reference = ours(followed), KaplanMeierFitter().fit(*followed)
    low, high = median_survival_times(reference.confidence_interval_).to_numpy()[0]
    median = curve.median
    told = (np.inf,) * 3 if median is None else (median.day, median.low or np.inf, median.high or np.inf)
    assert told == (reference.median_survival_time_, low, high)


def test_survival_and_its_error_equal_statsmodels(followed):
    """A second reference. It gives the standard error; ours is had back from the width of the interval."""
    curve, reference = ours(followed), SurvfuncRight(*followed)
    told = [step for step in curve.steps if step.survival > 0]
    assert [step.day for step in curve.steps] == list(reference.surv_times)
    assert [step.survival for step in curve.steps] == pytest.approx(list(reference.surv_prob), abs=NEAR)
    widths = [np.log(np.log(step.low) / np.log(step.high)) for step in told]
    errors = [
        -width / (2 * 1.959963984540054) * step.survival * np.log(step.survival)
        for width, step in zip(widths, told, strict=True)
    ]
    assert errors == pytest.approx(list(reference.surv_prob_se[: len(told)]), abs=NEAR)
