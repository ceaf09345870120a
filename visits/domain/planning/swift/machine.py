"""The compiled search behind plain Python: desks, weeks in and out, steps by the clock.

The compiler and its library are loaded here when a search begins, and nowhere else. Each search lets go of the
interpreter, so several run at once; a search repeats by seed and number of steps.
"""

from collections.abc import Callable, Iterator
from functools import cache
from importlib import import_module
from math import exp, log

from visits.domain.planning.board import Board, Order, Week
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.swift.arrays import week_arrays
from visits.domain.planning.swift.columns import SIZE

DAYS_SEEN = 1 << 15
"""Days that one search remembers for the choice among all days seen."""
WORK_PER_CALL = 4_000
"""Jobs x steps in one call of machine code: some tens of milliseconds."""
CALM = 1e-6
TINY = """{"format": "trimops-week-problem/1", "timezone": "UTC", "bases": [{"id": "b", "lat": 0, "lon": 0}],
 "sites": [{"id": "s", "lat": 0, "lon": 0.1}], "travel": {"kind": "estimate", "circuity": 1, "kmh": 60,
 "minutes_per_leg": 0}, "jobs": [{"id": "j", "site": "s", "minutes": 1, "windows": []}], "shifts": [{"id": "d",
 "crew": "c", "base": "b", "start": "2026-01-01T08:00:00+00:00", "end": "2026-01-01T09:00:00+00:00"}]}"""
"""The smallest week, to have every function compiled."""

Share = Callable[[int], float]
"""How much of a stage is used up after so many steps, 0 to 1."""


@cache
def make_ready() -> None:
    """Load the compiled search; compile it where this machine has not yet done so (about half a minute)."""
    search = SwiftSearch(Board(read_problem(TINY)), 1)
    search.begin_with(((),))
    search.run(float, 1.0, 1.0)


class SwiftSearch:
    """One search over a board's week. Not for more than one thread at a time."""

    def __init__(self, board: Board, seed: int) -> None:
        self.board = board
        self.code = import_module("visits.domain.planning.swift.machine_search")
        self.numbers = import_module("numpy")
        self.arrays = week_arrays(board)
        self.shifts, self.jobs = len(board.problem.shifts), len(board.problem.jobs)
        desks = import_module("visits.domain.planning.swift.machine_desk")
        self.desk = desks.make_desk(self.shifts, self.jobs, seed, DAYS_SEEN)
        self.top = desks.TOP

    def begin_with(self, week: Week) -> None:
        """Go on from this week; a day in it that breaks a rule is emptied."""
        orders = self.numbers.zeros((self.shifts, self.jobs + 1), dtype="int64")
        for shift, order in enumerate(week):
            orders[shift, : len(order)] = order
        sizes = self.numbers.array([len(order) for order in week], dtype="int64")
        self.code.load(self.arrays, self.desk, orders, sizes)

    def run(self, share: Share, hot: float, cold: float) -> None:
        """Search until the share is used up; the heat (money) falls from hot to cold."""
        steps, at = 0, share(0)
        each = max(1, WORK_PER_CALL // max(1, self.jobs))
        fall = log(max(cold, CALM) / max(hot, CALM))
        while at < 1 and self.jobs and self.shifts:
            heat = max(hot, CALM) * exp(fall * at)
            self.code.go_on(self.arrays, self.desk, each, heat, heat)
            steps += each
            at = share(steps)

    @property
    def cost(self) -> float:
        """Of the best week, as `Board.total` has it."""
        return float(self.desk.money[1])

    def best(self) -> Week:
        """The best week so far."""
        sizes = self.desk.now[self.top, :, SIZE]
        return tuple(
            tuple(int(job) for job in self.desk.order[self.top, shift, : sizes[shift]])
            for shift in range(self.shifts)
        )

    def days_seen(self) -> Iterator[tuple[tuple[int, frozenset[int]], tuple[float, Order]]]:
        """Days of the weeks passed through: (shift, jobs), (exact cost, order)."""
        for slot in self.numbers.flatnonzero(self.desk.pool_key):
            shift, size, *order = (int(value) for value in self.desk.pool_day[slot])
            jobs = tuple(order[:size])
            yield (shift, frozenset(jobs)), (float(self.desk.pool_cost[slot]), jobs)
