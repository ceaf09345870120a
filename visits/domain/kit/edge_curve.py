"""Cows per edge as a Kaplan-Meier curve: of a blade, of a kind, of a way of sharpening.

The curve, its interval (Greenwood's variance, log-log scale, 95 %) and the median with its interval are those of
`visits.domain.herd.survival_curve`, with cows in the place of days; held against lifelines and a published example in
tests/standards/test_edge_curve.py. An edge still in use is censored at the cows it has cut; `edge_lives` says
what else is. Edges that say nothing (`Edge.tells`) are left out.

When the figure must not be shown: fewer than `EDGES_ENOUGH` edges that went dull. The curve is drawn then, but no
finding is told.
"""

from collections import defaultdict
from collections.abc import Callable, Iterable
from typing import TypeVar

from visits.domain.herd.survival_curve import Followed, Median, SurvivalCurve, survival_curve
from visits.domain.kit.edge_lives import Edge

EDGES_ENOUGH = 8
Key = TypeVar("Key")


def edge_curve(edges: Iterable[Edge]) -> SurvivalCurve:
    """The share of edges that still cut after so many cows."""
    return survival_curve(Followed(edge.cows, edge.is_dull) for edge in edges if edge.tells)


def edge_curves(edges: Iterable[Edge], by: Callable[[Edge], Key]) -> dict[Key, SurvivalCurve]:
    """A curve for each group, those with most edges first."""
    groups: defaultdict[Key, list[Edge]] = defaultdict(list)
    for edge in edges:
        if edge.tells:
            groups[by(edge)].append(edge)
    in_order = sorted(groups.items(), key=lambda item: -len(item[1]))
    return {key: edge_curve(group) for key, group in in_order}


def is_enough(curve: SurvivalCurve) -> bool:
    """Whether enough edges went dull for a finding."""
    return curve.events >= EDGES_ENOUGH


def told_apart(one: Median, other: Median) -> bool:
    """Whether the intervals of two medians leave a gap between them: stricter than a test at 5 % would be."""
    lower, upper = sorted((one, other), key=lambda median: median.day)
    return lower.high is not None and upper.low is not None and lower.high < upper.low
