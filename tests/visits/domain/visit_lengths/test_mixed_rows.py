"""Held against all mixed-model equations solved at once by numpy (LAPACK), and against hand arithmetic."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from visits.domain.visit_lengths.mixed_rows import CommonPrior, MixedRow, solve_mixed


def made_rows(seed, columns=4, groups=3, rows=30):
    chance = np.random.default_rng(seed)
    made = []
    for number in range(rows):
        amounts = chance.normal(size=columns).round(3)
        common = tuple((at, float(amount)) for at, amount in enumerate(amounts) if chance.random() < 0.7)
        group = number if number < groups else int(chance.integers(groups))
        made.append(
            MixedRow(common, group, (1.0, float(chance.uniform(1, 30))), float(chance.normal(50, 20)))
        )
    return made


def dense(rows, prior, variances, noise):
    """All common columns and all groups' own parts in one table, solved together."""
    size, own = len(prior.means), len(variances)
    groups = max(row.group for row in rows) + 1
    design = np.zeros((len(rows), size + own * groups))
    for number, row in enumerate(rows):
        for at, amount in row.common:
            design[number, at] = amount
        start = size + own * row.group
        design[number, start : start + own] = row.own
    weights = 1 / np.array(noise)
    before = np.array([*prior.means, *([0.0] * own * groups)])
    precisions = np.diag([*prior.precisions, *([1 / v for v in variances] * groups)])
    covariance = np.linalg.inv(design.T @ (design * weights[:, None]) + precisions)
    values = np.array([row.value for row in rows])
    mean = before + covariance @ (design.T @ (weights * (values - design @ before)))
    return design, mean, covariance


@given(seed=st.integers(0, 5000))
def test_means_and_doubts_are_those_of_the_whole_system(seed):
    rows = made_rows(seed)
    prior = CommonPrior((1.0, -2.0, 0.0, 3.0), (0.5, 0.01, 2.0, 0.1))
    variances, noise = (4.0, 0.3), [1.0 + number % 5 for number in range(len(rows))]
    ours = solve_mixed(rows, prior, variances, noise)
    design, mean, covariance = dense(rows, prior, variances, noise)
    assert np.allclose(ours.mean, mean[:4], rtol=1e-8, atol=1e-8)
    assert np.allclose([group.mean for group in ours.groups], mean[4:].reshape(3, 2), rtol=1e-7, atol=1e-8)
    for row, line in zip(rows, design, strict=True):
        assert ours.fitted(row) == pytest.approx(line @ mean)
        assert ours.doubt(row) == pytest.approx(line @ covariance @ line)


def one_group(values, between, within, known=1e12):
    rows = [MixedRow(((0, 1.0),), 0, (1.0,), value) for value in values]
    return solve_mixed(rows, CommonPrior((10.0,), (known,)), (between,), [within] * len(values)).groups[0]


def test_one_group_with_a_known_mean_is_shrunk_by_the_formula_of_the_book():
    """n b / (n b + w) of its distance from the mean; the rest of the variance is b w / (n b + w)."""
    group = one_group([16.0, 18.0, 20.0], between=4.0, within=6.0)
    assert group.mean[0] == pytest.approx((18 - 10) * 12 / 18)
    assert group.covariance[0][0] == pytest.approx(4 * 6 / 18)


@given(
    values=st.lists(st.floats(0, 40), min_size=1, max_size=12),
    between=st.floats(0.1, 50),
    within=st.floats(0.1, 50),
)
def test_a_shrunk_mean_lies_between_the_common_mean_and_its_own(values, between, within):
    own = sum(values) / len(values) - 10
    shrunk = one_group(values, between, within).mean[0]
    assert min(0, own) - 1e-6 <= shrunk <= max(0, own) + 1e-6


@given(
    value=st.floats(-30, 30), between=st.floats(0.5, 20), within=st.floats(0.5, 20), more=st.integers(1, 20)
)
def test_more_data_shrink_less_and_leave_less_doubt(value, between, within, more):
    few, many = (one_group([10 + value] * count, between, within) for count in (2, 2 + more))
    assert abs(few.mean[0]) <= abs(many.mean[0]) + 1e-9
    assert 0 < many.covariance[0][0] < few.covariance[0][0]
