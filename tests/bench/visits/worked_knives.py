"""Knives worked day by day, lives drawn by chance, ground as the plan says; learned from is only what is noted.

Lives are Weibull with shape 2.6 and scale 30 cows (invented, as in the demo). Every word is noted: which knife is in
hand, when one drags, what was ground in the evening. Edges are learned anew once a week, each evening has its plan.
"""

from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from random import Random

from visits.domain.kit.blade_kinds import BladeKind, EdgeBefore, Hand, SharpenMethod
from visits.domain.kit.edge_life import NEW, EdgeLives, learn_lives
from visits.domain.kit.edge_lives import BladeLog, Edge, Sharpened, edges_of
from visits.domain.kit.edge_log import CowCut, Turn, cows_by_blade
from visits.domain.kit.grinding_plan import DayOfCows, EdgeNow, grinding_plan

START = datetime(2026, 1, 5, 8, tzinfo=UTC)
SCALE, SHAPE = 30, 2.6
HEADS = (8, 12, 16, 20, 25, 30, 40)
KNIFE, BELT = BladeKind.HOOF_KNIFE, SharpenMethod.BELT


@dataclass(frozen=True)
class WorkedDay:
    """A day that was planned: the chance that was foreseen of running out of sharp edges, whether they did run out, how
    many were ground before it."""

    foreseen: float
    ran_out: bool
    ground: int


@dataclass
class Knives:
    """A van's knives of one job, and what was noted of them."""

    chance: Random
    number: int = 4
    cows: list[CowCut] = field(default_factory=list)
    turns: list[Turn] = field(default_factory=list)
    sharpened: dict[int, list[Sharpened]] = field(default_factory=dict)
    left: dict[int, int] = field(default_factory=dict)
    done: dict[int, int] = field(default_factory=dict)

    def __post_init__(self) -> None:
        for knife in range(self.number):
            self.sharpened[knife] = []
            self._new_edge(knife)

    def edges(self) -> dict[int, tuple[Edge, ...]]:
        """As the log has them."""
        in_hand = cows_by_blade(self.cows, self.turns)
        return {knife: edges_of(self._log(knife), in_hand.get(knife, ())) for knife in self.left}

    def now(self, lives: EdgeLives) -> list[EdgeNow]:
        fresh = {knife: lives.of(knife, KNIFE, BELT) for knife in self.left}
        return [
            EdgeNow(
                knife,
                self.done[knife],
                lives.of(knife, KNIFE, BELT if self.sharpened[knife] else NEW),
                fresh[knife],
                is_dull=self.left[knife] <= 0,
            )
            for knife in self.left
        ]

    def grind(self, knife: int, at: datetime) -> None:
        before = EdgeBefore.DULL if self.left[knife] <= 0 else EdgeBefore.STILL_CUT
        self.sharpened[knife].append(Sharpened(at, BELT, before))
        self._new_edge(knife)

    def work(self, at: datetime, heads: int) -> bool:
        """A day, the most worn sharp knife first. True when every edge was dull with cows still to come."""
        order = sorted(self.left, key=lambda knife: (self.left[knife] <= 0, -self.done[knife]))
        hand, ran_out = order.pop(0), False
        self.turns.append(Turn(1, 1, at, frozenset({hand})))
        for cow in range(heads):
            noted = at + timedelta(minutes=10 * (cow + 1))
            ran_out = ran_out or self.left[hand] <= 0
            was_sharp = self.left[hand] > 0
            self.left[hand] -= 1
            self.done[hand] += was_sharp
            self.cows.append(CowCut(1, 1, noted))
            if was_sharp and self.left[hand] <= 0:
                dull, hand = hand, order.pop(0) if order else hand
                self.turns.append(
                    Turn(1, 1, noted + timedelta(minutes=1), frozenset({hand}), frozenset({dull}))
                )
        return ran_out

    def _new_edge(self, knife: int) -> None:
        self.left[knife] = max(1, round(self.chance.weibullvariate(SCALE, SHAPE)))
        self.done[knife] = 0

    def _log(self, knife: int) -> BladeLog:
        turns = tuple(turn for turn in self.turns if knife in turn.in_hand | turn.went_dull)
        sharpened = tuple(self.sharpened[knife])
        return BladeLog(knife, KNIFE, Hand.RIGHT, START - timedelta(days=1), turns=turns, sharpened=sharpened)


def work_days(seed: int, days: int, limit: float, unplanned: int = 42) -> tuple[Knives, list[WorkedDay]]:
    """So many days, the first of them without a plan: what is dull is ground, and nothing else."""
    knives = Knives(Random(seed))
    worked: list[WorkedDay] = []
    lives: EdgeLives | None = None
    for number in range(days):
        at, heads = START + timedelta(days=number), knives.chance.choice(HEADS)
        if number >= unplanned and (lives is None or number % 7 == 0):
            lives = learn_lives((edge for edges in knives.edges().values() for edge in edges), 25)
        if lives is None:
            for knife in [knife for knife, left in knives.left.items() if left <= 0]:
                knives.grind(knife, at - timedelta(hours=12))
            knives.work(at, heads)
            continue
        (plan,) = grinding_plan(knives.now(lives), [DayOfCows(at.date(), heads)], limit)
        for knife in plan.grind:
            knives.grind(knife, at - timedelta(hours=12))
        worked.append(WorkedDay(plan.chance, knives.work(at, heads), len(plan.grind)))
    return knives, worked
