"""The best week that can be put together from days already seen: set partitioning, by HiGHS."""

from collections.abc import Iterable, Mapping
from math import inf
from time import monotonic

from visits.domain.planning.board import Board, Order, Week
from visits.domain.planning.exact.cover_model import Column
from visits.domain.planning.exact.reduced_costs import ReducedCosts
from visits.domain.planning.exact.week_rows import WeekRows, days_of, left_by, weight_left_by

Pool = Mapping[tuple[int, frozenset[int]], tuple[float, Order]]
"""By shift and set of jobs: the exact cost and the order of the best day known."""
FIRST, MORE, MOST = 1_000, 1_000, 20_000
"""Days in the first relaxed model, days added at a time, and days in the last choice."""


def choose_days(board: Board, pool: Pool, start: Week, seconds: float, *, nodes: int | None = None) -> Week:
    """The cheapest week of pooled days and those of `start`, each job at most once; never dearer than `start`.

    Costs in the pool must be exact. With `nodes` the search ends after so many branches, and the same pool in
    the same order gives the same week; else it ends by the clock.
    """
    choice = _Choice(board, pool, start, inf if nodes is not None else monotonic() + seconds)
    kept = choice.worth_a_look()
    return start if kept is None else min(start, choice.best_of(kept, nodes), key=board.total)


class _Choice:
    """The days of one call, those of the start first."""

    def __init__(self, board: Board, pool: Pool, start: Week, ends: float) -> None:
        self.ends, self.shifts = ends, len(start)
        self.days = days_of(start)
        self.costs = [board.cost(shift, order) for shift, order in self.days]
        self.own = range(len(self.days))
        own = {
            (shift, frozenset(order)): cost
            for (shift, order), cost in zip(self.days, self.costs, strict=True)
        }
        for (shift, jobs), (cost, order) in pool.items():
            if order and cost < own.get((shift, jobs), inf):
                self.days.append((shift, order))
                self.costs.append(cost)
        self.rows = WeekRows(board, weight_left_by(board, start), self._weight_price(board))
        self.left = left_by(board, start)
        self.start_cost = sum(self.costs[at] for at in self.own)
        self.start_cost += sum(self.rows.left_out(job).cost for job in self.left)

    def _weight_price(self, board: Board) -> float:
        """More than any choice of these days can cost."""
        out = sum(job.leave_out_cost or 0.0 for job in board.problem.jobs)
        return 1.0 + out + self.shifts * max(self.costs, default=0.0)

    def worth_a_look(self) -> list[int] | None:
        """Days that may be in a cheaper week; None where there is no such week or the clock was faster.

        A day whose reduced cost is above the gap between the start and the relaxed optimum is in no cheaper week.
        """
        model, prices = self.rows.model(), ReducedCosts(self.days, self.costs, self.rows.shift_row)
        fresh = list(range(min(len(self.days), max(FIRST, len(self.own)))))
        while True:
            model.add([self._column(at) for at in fresh])
            relaxed = model.relaxed(self.ends - monotonic())
            if relaxed is None:
                return None
            prices.at(relaxed.prices)
            prices.leave_aside(fresh)
            fresh = prices.cheapest(-1e-9 * (1.0 + self.start_cost), MORE)
            if not fresh:
                gap = self.start_cost - relaxed.cost
                return None if gap < 1e-6 else prices.within(gap + 1e-6, MOST)

    def best_of(self, kept: Iterable[int], nodes: int | None) -> Week:
        """The best week of these days found within the limits."""
        chosen = sorted({*self.own, *kept})
        model, jobs = self.rows.model(), self.rows.shift_row
        model.add([self._column(at) for at in chosen])
        first = [*self.left, *(jobs + spot for spot, at in enumerate(chosen) if at in self.own)]
        found = model.chosen(first, self.ends - monotonic(), nodes).columns
        week: list[Order] = [()] * self.shifts
        for column in found:
            if column >= jobs:
                shift, order = self.days[chosen[column - jobs]]
                week[shift] = order
        return tuple(week)

    def _column(self, at: int) -> Column:
        shift, order = self.days[at]
        return self.rows.day(shift, order, self.costs[at])
