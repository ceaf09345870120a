"""Best linear unbiased prediction with one level of groups: what is common to all, and each group's own part.

    value = sum(amount x common) + sum(own amount x group's own) + noise

The common part has a normal prior (mean, precision), each group's own part a normal one about 0 with given variances,
the noise of each row a given variance. All are normal, so the posterior is exact: it solves the mixed-model equations
(Henderson 1950 and 1975; Robinson 1991, "That BLUP is a good thing"; from memory). The groups are taken out of the
equations one by one (Schur complement): work grows with the number of groups, not with its cube.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from visits.domain.visit_lengths.small_algebra import Table, Vector, inverse, product, times, turned, zeros

Sparse = tuple[tuple[int, float], ...]
"""(column, amount) of the columns that are not 0."""


@dataclass(frozen=True)
class MixedRow:
    """One observation. `own` are the amounts of the group's own part, as many as it has variances."""

    common: Sparse
    group: int
    own: tuple[float, ...]
    value: float


@dataclass(frozen=True)
class CommonPrior:
    """Of each column. A precision is 1 / variance; nearly 0 says that nothing is known beforehand."""

    means: tuple[float, ...]
    precisions: tuple[float, ...]


@dataclass(frozen=True)
class GroupPart:
    """A group's own part: mean, covariance, and covariance with the common columns (own rows, common columns)."""

    mean: Vector
    covariance: Table
    cross: Table


@dataclass(frozen=True)
class Solved:
    """The posterior."""

    mean: Vector
    covariance: Table
    groups: tuple[GroupPart, ...]

    def fitted(self, row: MixedRow) -> float:
        """The expected value of a row."""
        own = zip(row.own, self.groups[row.group].mean, strict=True)
        return sum(amount * self.mean[at] for at, amount in row.common) + sum(a * b for a, b in own)

    def doubt(self, row: MixedRow) -> float:
        """The variance of that expectation."""
        return doubt_of(row.common, row.own, self.covariance, self.groups[row.group])


def doubt_of(common: Sparse, own: Sequence[float], covariance: Table, group: GroupPart) -> float:
    """Variance of an expectation: what is unsure in the common part, in the group's own, and in both together."""
    total = sum(a * b * covariance[at][to] for at, a in common for to, b in common)
    total += 2 * sum(b * a * group.cross[k][at] for k, b in enumerate(own) for at, a in common)
    return total + sum(a * b * group.covariance[k][to] for k, a in enumerate(own) for to, b in enumerate(own))


@dataclass
class _Sums:
    """Weighted sums of one group's rows: own by own, common by own, own by value."""

    own: Table
    mixed: Table
    right: Vector


def solve_mixed(
    rows: Sequence[MixedRow], prior: CommonPrior, variances: Sequence[float], noise: Sequence[float]
) -> Solved:
    """The posterior, exactly. Groups are numbered from 0; `noise` holds each row's variance."""
    size, own = len(prior.means), len(variances)
    count = max((row.group for row in rows), default=-1) + 1
    common = [[prior.precisions[a] if a == b else 0.0 for b in range(size)] for a in range(size)]
    right = [0.0] * size
    sums = [_Sums(_diagonal(variances), zeros(own, size), [0.0] * own) for _ in range(count)]
    for row, variance in zip(rows, noise, strict=True):
        _add(row, 1 / variance, prior, common, right, sums[row.group])
    steps = [(inverse(group.own), group) for group in sums]
    for within, group in steps:
        _take_out(within, group, common, right)
    covariance = inverse(common)
    shift = times(covariance, right)
    groups = tuple(_group_part(within, group, covariance, shift) for within, group in steps)
    return Solved([a + b for a, b in zip(prior.means, shift, strict=True)], covariance, groups)


def _diagonal(variances: Sequence[float]) -> Table:
    return [[1 / v if a == b else 0.0 for b in range(len(variances))] for a, v in enumerate(variances)]


def _add(
    row: MixedRow, weight: float, prior: CommonPrior, common: Table, right: Vector, group: _Sums
) -> None:
    off = row.value - sum(amount * prior.means[at] for at, amount in row.common)
    for at, amount in row.common:
        weighed = weight * amount
        right[at] += weighed * off
        for to, other in row.common:
            common[at][to] += weighed * other
        for k, part in enumerate(row.own):
            group.mixed[k][at] += weighed * part
    for k, part in enumerate(row.own):
        group.right[k] += weight * part * off
        for to, other in enumerate(row.own):
            group.own[k][to] += weight * part * other


def _take_out(within: Table, group: _Sums, common: Table, right: Vector) -> None:
    carried = product(within, group.mixed)
    used = [at for at in range(len(right)) if any(row[at] for row in group.mixed)]
    for at in used:
        column = [row[at] for row in group.mixed]
        for to in used:
            common[at][to] -= sum(a * row[to] for a, row in zip(column, carried, strict=True))
        right[at] -= sum(row[at] * value for row, value in zip(carried, group.right, strict=True))


def _group_part(within: Table, group: _Sums, covariance: Table, shift: Vector) -> GroupPart:
    rest = [value - part for value, part in zip(group.right, times(group.mixed, shift), strict=True)]
    carried = product(within, group.mixed)
    cross = [[-value for value in row] for row in product(carried, covariance)]
    more = product([[-value for value in row] for row in cross], turned(carried))
    own = [
        [a + b for a, b in zip(first, second, strict=True)]
        for first, second in zip(within, more, strict=True)
    ]
    return GroupPart(times(within, rest), own, cross)
