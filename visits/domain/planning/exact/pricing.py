"""The cheapest days of each shift at given prices of the jobs, by the compiled labels; two shifts at a time."""

from collections.abc import Sequence
from concurrent.futures import ThreadPoolExecutor, wait
from enum import IntEnum
from functools import cache
from importlib import import_module
from math import inf
from types import ModuleType
from typing import TYPE_CHECKING, NamedTuple

from visits.domain.planning.board import Board, Order
from visits.domain.planning.exact.shift_arrays import Floats, Ints, shift_arrays
from visits.domain.planning.exact.time_left import TimeLeft
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.swift.machine import TINY

if TYPE_CHECKING:
    from visits.domain.planning.exact.label_store import Search

MOST_JOBS = 64
"""Jobs done are bits of one machine word."""
LABELS, WIDTH, HOMES = 2_000_000, 40_000, 200_000
"""Room for the labels of one search, for settled ones of one job, and for days found."""
CORES, LOOK_UP = 2, 0.05
SHARES = (0.3, 1.0)
"""Of the way from what no day undercuts to the limit: the nearer, the less there is to look at."""
MEMORY = 10
"""How many stops near a job remember it in the completions; the days themselves remember all."""


@cache
def make_ready() -> None:
    """Load the compiled labels; compile them where this machine has not yet done so (about half a minute)."""
    problem = read_problem(TINY)
    for way in Way:
        Pricing(Board(problem)).best_days([1e9], [0.0], 1, way, TimeLeft(600))


class Way(IntEnum):
    """`BEST` proves the least; `QUICK` finds cheap days and proves nothing; `EVERY` finds the cheapest day of every
    set of jobs below the limit. Numbers as in the compiled labels."""

    BEST = 0
    QUICK = 1
    EVERY = 2


class Day(NamedTuple):
    """A day out: its cost, and its jobs in order."""

    shift: int
    cost: float
    order: Order


class Found(NamedTuple):
    """No day of the shift costs less than `least` after prices. `days` are the cheapest below the limit; all of
    them were seen where `whole`."""

    least: float
    whole: bool
    days: list[Day]


class Pricing:
    """The shifts of a week, made ready."""

    def __init__(self, board: Board) -> None:
        self.np: ModuleType = import_module("numpy")
        self.labels: ModuleType = import_module("visits.domain.planning.exact.label_store")
        self.day_labels: ModuleType = import_module("visits.domain.planning.exact.day_labels")
        self.completions: ModuleType = import_module("visits.domain.planning.exact.completions")
        self.jobs, self.shifts = len(board.problem.jobs), len(board.problem.shifts)
        self.arrays = [shift_arrays(board, at) for at in range(self.shifts)]
        self.near = [self._memory(at) for at in range(self.shifts)]
        self.running: list[Ints] = []

    def best_days(
        self, prices: Sequence[float], limits: Sequence[float], most: int, way: Way, time: TimeLeft
    ) -> list[Found]:
        """Of every shift, at most so many days that cost less than its limit after the prices of their jobs."""
        paid = self.np.array(prices[: self.jobs], dtype=self.np.float64)
        with ThreadPoolExecutor(CORES) as pool:
            runs = [pool.submit(self._one, at, paid, limits[at], most, way) for at in range(self.shifts)]
            while wait(runs, LOOK_UP).not_done:
                if time.over:
                    for run in runs:
                        run.cancel()
                    for counts in self.running:
                        counts[self.labels.FULL] = 1
            return [_nothing() if run.cancelled() else run.result() for run in runs]

    def _one(self, at: int, paid: Floats, limit: float, most: int, way: Way) -> Found:
        day, room = self.arrays[at], self.labels.new_search
        back = self._begun(room(self.jobs, LABELS, WIDTH, 1, Way.BEST.value))
        self.completions.complete(day, back, paid, self.near[at])
        if back.counts[self.labels.FULL]:
            return _nothing()
        least = float(self.completions.least_day(day, back, paid))
        if least >= limit:
            return Found(least, True, [])
        shares = (1.0,) if way is Way.EVERY else SHARES
        for share in shares:
            search = self._begun(room(self.jobs, LABELS, 1 if way is Way.EVERY else WIDTH, HOMES, way.value))
            below = least + share * (limit - least)
            cheapest = float(self.day_labels.run(day, search, back, paid, below))
            full = bool(search.counts[self.labels.FULL])
            if full or cheapest < below:
                break
        whole = way is not Way.QUICK and not full
        if whole:
            least = max(least, min(cheapest, limit))
        return Found(least, whole, self._days(at, search, paid, most))

    def _begun(self, search: "Search") -> "Search":
        self.running.append(search.counts)
        return search

    def _days(self, at: int, search: "Search", paid: Floats, most: int) -> list[Day]:
        """The cheapest day of each set of jobs, cheapest first."""
        costs = search.home_cost[: search.counts[self.labels.DONE]]
        days: dict[frozenset[int], Day] = {}
        for spot in self.np.argsort(costs, kind="stable"):
            order = self._order(search, int(search.home[spot]))
            if frozenset(order) not in days:
                cost = float(costs[spot]) + sum(float(paid[job]) for job in order)
                days[frozenset(order)] = Day(at, cost, order)
            if len(days) >= most:
                break
        return list(days.values())

    def _order(self, search: "Search", label: int) -> Order:
        order = []
        while label >= 0:
            order.append(int(search.who[label, self.labels.JOB]))
            label = int(search.who[label, self.labels.PARENT])
        return tuple(reversed(order[:-1]))

    def _memory(self, at: int) -> Ints:
        """Who remembers whom, as bits: each job the nearest ones and itself."""
        drive = self.arrays[at].drive[: self.jobs, : self.jobs]
        near = self.np.argsort(drive + drive.T, axis=1, kind="stable")[:, :MEMORY]
        bits = [sum(1 << int(other) for other in {job, *near[job]}) for job in range(self.jobs)]
        memory: Ints = self.np.array(bits, dtype=self.np.uint64)
        return memory


def _nothing() -> Found:
    return Found(-inf, False, [])
