"""Held against a published worked example: the yield of dyestuff from six batches of five samples each (O. L. Davies
1947, Statistical Methods in Research and Production; Box and Tiao 1973, Bayesian Inference in Statistical
Analysis).

Restricted maximum likelihood gives variances 1764.05 between and 2451.25 within batches, and the batches' shrunk
deviations below (figures and data from memory; for a balanced table they also follow from the mean squares, which
is checked as well).
"""

import math
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from visits.domain.visit_lengths.mixed_rows import CommonPrior, MixedRow
from visits.domain.visit_lengths.variance_steps import FitWay, Guess, Variances, fit_mixed

DYESTUFF = (
    (1545, 1440, 1440, 1520, 1580),
    (1540, 1555, 1490, 1560, 1495),
    (1595, 1550, 1605, 1510, 1560),
    (1445, 1440, 1595, 1465, 1545),
    (1595, 1630, 1515, 1635, 1625),
    (1520, 1455, 1450, 1480, 1445),
)
SHRUNK = (-17.607, 0.391, 28.562, -23.085, 56.733, -44.995)
NOTHING_KNOWN = CommonPrior((1500.0,), (1e-12,))


@pytest.fixture(scope="module")
def dyestuff():
    rows = [MixedRow(((0, 1.0),), at, (1.0,), float(y)) for at, batch in enumerate(DYESTUFF) for y in batch]
    way = FitWay((Guess(1000.0),), Guess(2000.0), growth=0.0, steps=3000, close=1e-10)
    return fit_mixed(rows, NOTHING_KNOWN, way)


def test_the_variances_of_the_published_example_are_found(dyestuff):
    assert dyestuff.variances.groups[0] == pytest.approx(1764.05, abs=0.01)
    assert dyestuff.variances.scale == pytest.approx(2451.25, abs=0.01)
    assert dyestuff.solved.mean[0] == pytest.approx(1527.5)


def test_they_are_those_of_the_mean_squares(dyestuff):
    means = [sum(batch) / 5 for batch in DYESTUFF]
    whole = sum(means) / 6
    within = sum((y - m) ** 2 for batch, m in zip(DYESTUFF, means, strict=True) for y in batch) / 24
    between = (5 * sum((m - whole) ** 2 for m in means) / 5 - within) / 5
    assert dyestuff.variances.scale == pytest.approx(within, rel=1e-5)
    assert dyestuff.variances.groups[0] == pytest.approx(between, rel=1e-5)


def test_the_batches_are_shrunk_as_published(dyestuff):
    assert [group.mean[0] for group in dyestuff.solved.groups] == pytest.approx(SHRUNK, abs=0.002)


def made_rows(growth, scale=0.5, count=400, seed=3):
    chance = Random(seed)
    rows = []
    for number in range(count):
        cows = chance.randrange(1, 60)
        mean = 40 + 8 * cows
        spread = math.sqrt(scale * mean**growth)
        rows.append(
            MixedRow(((0, 1.0), (1, float(cows))), number % 8, (1.0,), mean + chance.gauss(0, spread))
        )
    return rows


WAY = FitWay((Guess(25.0, 2),), Guess(1.0, 2))
PRIOR = CommonPrior((30.0, 7.0), (0.01, 0.1))


@pytest.mark.parametrize("growth", [1.0, 2.0])
def test_how_the_noise_grows_is_found(growth):
    found = fit_mixed(made_rows(growth), PRIOR, WAY).variances
    assert found.growth == pytest.approx(growth, abs=0.26)


def test_a_few_wild_values_hardly_move_the_fit():
    rows = made_rows(1.5)
    wild = [MixedRow(row.common, row.group, row.own, row.value + 600) for row in rows[:12]]
    way = FitWay(WAY.groups, WAY.noise, growth=1.5, freedom=5.0)
    clean, soiled = (fit_mixed(some, PRIOR, way) for some in (rows, [*wild, *rows[12:]]))
    assert soiled.solved.mean[1] == pytest.approx(clean.solved.mean[1], rel=0.03)
    assert soiled.variances.scale < 2 * clean.variances.scale
    assert max(soiled.weights[:12]) < 0.2


def test_where_no_row_is_doubted_every_weight_is_one():
    assert set(fit_mixed(made_rows(1.5), PRIOR, WAY).weights) == {1.0}


def test_nothing_can_be_learned_from_no_rows():
    with pytest.raises(ValueError, match="no rows"):
        fit_mixed([], PRIOR, WAY)


@given(scale=st.floats(0.01, 5), growth=st.floats(1, 2), size=st.floats(0, 600), more=st.floats(1, 300))
def test_the_noise_is_positive_and_grows_with_the_size(scale, growth, size, more):
    noise = Variances((1.0,), scale, growth).noise
    assert 0 < noise(size) <= noise(size + more)
