"""How long an edge will still cut, as chances.

An `EdgeLife` is a curve in whole cows, learned in steps from wide to narrow: the kind of blade, then the way it was
sharpened, then the blade itself. The kind's curve is Kaplan-Meier. Each narrower group is pulled towards the wider one:
its chance of going dull at the next cow is (8 x the wider group's + its own dull edges) / (8 + its own edges that got
so far). That is the posterior mean of a beta process with weight 8 (Hjort 1990, Ann Stat 18:1259; from memory), so a
blade with few edges is counted on like the others of its kind, and one with many like itself. The weight is our choice.

A kind of which fewer than 8 edges went dull has no curve of its own: it is counted on for the business's own figure
(`KitFigures.cows_per_edge`, common practice, no source), not longer and with no chances.

No curve goes further than any edge of its kind went. Beyond that nobody knows: the edge is counted as dull.
"""

from collections import defaultdict
from collections.abc import Callable, Hashable, Iterable, Sequence
from dataclasses import dataclass
from typing import Final, Literal, TypeVar

import numpy as np
from numpy.typing import NDArray

from visits.domain.kit.blade_kinds import BladeKind, SharpenMethod
from visits.domain.kit.edge_curve import EDGES_ENOUGH
from visits.domain.kit.edge_lives import Edge

NEW: Final = "new"
Made = SharpenMethod | Literal["new"] | None
WEIGHT = 8.0
Floats = NDArray[np.float64]
Key = TypeVar("Key", bound=Hashable)


@dataclass(frozen=True)
class EdgeLife:
    """`survival[k]`: chance that an edge still cuts after k cows. The last k is as far as any went or is counted on.

    `dull_edges` of the narrowest group it was learned from; `is_practice`: the business's own figure, no chance.
    """

    survival: tuple[float, ...]
    dull_edges: int = 0
    is_practice: bool = False

    @property
    def reach(self) -> int:
        """The most cows anything is known of."""
        return len(self.survival) - 1

    def chance_dull(self, cows: int, ahead: int) -> float:
        """That an edge which still cuts after `cows` cows goes dull during the next `ahead`: 1 - S(cows + ahead) /
        S(cows). Beyond what is known: 1."""
        if ahead <= 0:
            return 0.0
        if cows + ahead > self.reach or self.survival[cows] <= 0:
            return 1.0
        return 1 - self.survival[cows + ahead] / self.survival[cows]

    def is_beyond(self, cows: int, ahead: int) -> bool:
        """Whether nobody has gone that far."""
        return cows + ahead > self.reach

    def cows_left(self, cows: int, chance: float) -> int:
        """For how many more cows an edge with `cows` behind it may be counted on, so that it goes dull before with at
        most this chance."""
        ahead = 0
        while self.chance_dull(cows, ahead + 1) <= chance:
            ahead += 1
        return ahead

    def left(self, cows: int, most: int) -> Floats:
        """Chances that the edge cuts exactly 0, 1, ... more cows sharp; the last one: `most` or more. They sum to 1.

        The cow at which it goes dull is not among them: she is finished with the next edge.
        """
        at_least = np.array([*(1 - self.chance_dull(cows, ahead) for ahead in range(most + 1)), 0.0])
        left: Floats = at_least[:-1] - at_least[1:]
        return left


@dataclass(frozen=True)
class EdgeLives:
    """What was learned of a business's edges. `figure` stands in for kinds that tell too little."""

    kinds: dict[BladeKind, EdgeLife]
    made: dict[tuple[BladeKind, Made], EdgeLife]
    blades: dict[tuple[int, Made], EdgeLife]
    figure: EdgeLife

    def of(self, blade: int, kind: BladeKind, made: Made) -> EdgeLife:
        """The narrowest that is known of an edge made that way on that blade."""
        narrow = self.blades.get((blade, made)) or self.made.get((kind, made))
        return narrow or self.kinds.get(kind) or self.figure


def learn_lives(edges: Iterable[Edge], cows_per_edge: float) -> EdgeLives:
    """What all edges of a business say, over its own figure."""
    by_kind: defaultdict[BladeKind, list[Edge]] = defaultdict(list)
    for edge in edges:
        if edge.tells:
            by_kind[edge.kind].append(edge)
    kinds: dict[BladeKind, EdgeLife] = {}
    made: dict[tuple[BladeKind, Made], EdgeLife] = {}
    blades: dict[tuple[int, Made], EdgeLife] = {}
    for kind, group in by_kind.items():
        if sum(edge.is_dull for edge in group) < EDGES_ENOUGH:
            continue
        wide = _Hazard.of(group, max(edge.cows for edge in group))
        kinds[kind] = wide.life
        for way, ground in _grouped(group, made_how).items():
            middle = wide.pulled(ground)
            made[kind, way] = middle.life
            for blade, own in _grouped(ground, lambda edge: edge.blade).items():
                blades[blade, way] = middle.pulled(own).life
    return EdgeLives(kinds, made, blades, EdgeLife((1.0,) * (int(cows_per_edge) + 1), is_practice=True))


def made_how(edge: Edge) -> Made:
    """How an edge was made: NEW with the blade, the method, or None where nobody said."""
    return NEW if edge.is_new else edge.method


def _grouped(edges: Sequence[Edge], by: Callable[[Edge], Key]) -> dict[Key, list[Edge]]:
    groups: defaultdict[Key, list[Edge]] = defaultdict(list)
    for edge in edges:
        groups[by(edge)].append(edge)
    return groups


@dataclass(frozen=True)
class _Hazard:
    """The chance of going dull at each cow, 0 to `reach`, and from how many dull edges it was learned."""

    chances: Floats
    dull_edges: int

    @classmethod
    def of(cls, edges: Sequence[Edge], reach: int) -> "_Hazard":
        dull, at_risk = _counts(edges, reach)
        return cls(dull / at_risk, int(dull.sum()))

    def pulled(self, edges: Sequence[Edge]) -> "_Hazard":
        """The hazard of a group among those that this one was learned from."""
        dull, at_risk = _counts(edges, len(self.chances) - 1)
        return _Hazard((WEIGHT * self.chances + dull) / (WEIGHT + at_risk), int(dull.sum()))

    @property
    def life(self) -> EdgeLife:
        return EdgeLife(tuple(np.cumprod(1 - self.chances).tolist()), self.dull_edges)


def _counts(edges: Sequence[Edge], reach: int) -> tuple[Floats, Floats]:
    """At each number of cows: edges that went dull there, edges that got there."""
    cows = np.array([edge.cows for edge in edges])
    is_dull = np.array([edge.is_dull for edge in edges])
    dull = np.bincount(cows[is_dull], minlength=reach + 1).astype(np.float64)
    ended = np.bincount(cows, minlength=reach + 1)
    return dull, ended[::-1].cumsum()[::-1].astype(np.float64)
