"""Prices of jobs and shifts, better and better, until no day of any shift is cheaper than its prices.

The dual bound of any prices is proven (Lagrange): jobs pay their prices, each shift's cheapest day after prices is
refunded. Column generation, after Dantzig and Wolfe 1960 and Desrochers, Desrosiers and Solomon 1992, from memory.
"""

from collections.abc import Iterable, Mapping, Sequence
from math import fsum, inf

from visits.domain.planning.board import Board, Order, Week
from visits.domain.planning.exact.cover_model import Relaxed
from visits.domain.planning.exact.pricing import Day, Found, Pricing, Way
from visits.domain.planning.exact.reduced_costs import ReducedCosts
from visits.domain.planning.exact.time_left import TimeLeft
from visits.domain.planning.exact.week_rows import WeekRows, days_of, weight_left_by

Pool = Mapping[tuple[int, frozenset[int]], tuple[float, Order]]
"""Days known beforehand, by shift and set of jobs: exact cost and order."""
EACH = 40
"""Days added per shift and round."""
TINY = 1e-6
PULL = 0.7
"""How much of the best prices known goes into the next ones."""


class ColumnGeneration:
    """`bound` is what no plan undercuts that leaves out no more weight than `start`; it only grows. `days` are all
    days seen; `relaxed` the last answer of the model, `least` each shift's proven least after the best prices."""

    def __init__(
        self, board: Board, start: Week, weight_price: float = 0.0, pool: Pool | None = None
    ) -> None:
        self.board = board
        self.rows = WeekRows(board, weight_left_by(board, start), weight_price)
        self.pricing = Pricing(board)
        self.model = self.rows.model()
        self.days: list[Day] = []
        self.bound, self.prices, self.least = (
            -inf,
            first_prices(board, self.rows, start),
            [-inf] * self.pricing.shifts,
        )
        self.relaxed: Relaxed | None = None
        self.finished = False
        self.seen = seen_days(board, pool or {})
        self.seen_costs = ReducedCosts(
            [(day.shift, day.order) for day in self.seen],
            [day.cost for day in self.seen],
            self.rows.shift_row,
        )
        self.take(Day(shift, board.cost(shift, order), order) for shift, order in days_of(start))

    def take(self, days: Iterable[Day]) -> None:
        """More days to choose from."""
        fresh = list(days)
        self.days.extend(fresh)
        self.model.add([self.rows.day(day.shift, day.order, day.cost) for day in fresh])

    def run(self, time: TimeLeft) -> None:
        """Until the relaxed week is proven best or the time is up. Quick rounds first, then proven ones."""
        way, pull = Way.QUICK, PULL
        while not self.finished and not time.over:
            relaxed = self.model.relaxed(time.left)
            if relaxed is None:
                return
            self.relaxed = relaxed
            if again := self._seen_again(relaxed):
                self.take(again)
                continue
            prices = blended(self.prices, relaxed.prices, pull)
            found = self.pricing.best_days(prices, self._limits(prices), EACH, way, time)
            self._note(prices, found)
            fresh = [day for each in found for day in each.days if self._pays(day, relaxed)]
            self.take(fresh)
            if not fresh and not pull:
                self.finished = all(each.whole for each in found)
                way = Way.BEST
            pull = pull if fresh else 0.0

    def _seen_again(self, relaxed: Relaxed) -> list[Day]:
        """Days the board has costed before that are cheaper than their prices."""
        self.seen_costs.at(relaxed.prices)
        found = self.seen_costs.cheapest(-TINY, EACH * self.pricing.shifts)
        self.seen_costs.leave_aside(found)
        return [self.seen[at] for at in found]

    def _limits(self, prices: Sequence[float]) -> list[float]:
        """What a day must stay below, after the prices of its jobs, to be worth its shift."""
        first = self.rows.shift_row
        return [min(0.0, prices[first + shift]) - TINY for shift in range(self.pricing.shifts)]

    def _pays(self, day: Day, relaxed: Relaxed) -> bool:
        """Whether the day is cheaper than the prices of the model's last answer."""
        paid = sum(relaxed.prices[job] for job in day.order) + relaxed.prices[self.rows.shift_row + day.shift]
        return day.cost < paid - TINY

    def _note(self, prices: Sequence[float], found: Sequence[Found]) -> None:
        bound = self._bound(prices, found)
        if bound > self.bound:
            self.bound, self.prices = bound, list(prices)
            self.least = [min(0.0, each.least) for each in found]

    def _bound(self, prices: Sequence[float], found: Sequence[Found]) -> float:
        """The dual bound, a little lower than the sum says, for its rounding."""
        rows, jobs = self.rows, self.rows.shift_row
        weight = min(0.0, prices[rows.weight_row])
        parts = [*prices[:jobs], weight * rows.weight_left, *(min(0.0, each.least) for each in found)]
        for job in range(jobs):
            left = rows.left_out(job)
            parts.append(left.most * min(0.0, left.cost - prices[job] - weight * rows.weights[job]))
        return fsum(parts) - 1e-12 * fsum(abs(part) for part in parts) - TINY


def seen_days(board: Board, pool: Pool) -> list[Day]:
    """The cheapest known order of every shift and set of jobs, of the pool and of all that the board has costed."""
    best = {key: Day(key[0], cost, order) for key, (cost, order) in pool.items() if order and cost < inf}
    for (shift, order), cost in board.known.items():
        key = shift, frozenset(order)
        if order and cost < inf and (key not in best or cost < best[key].cost):
            best[key] = Day(shift, cost, order)
    return list(best.values())


def first_prices(board: Board, rows: WeekRows, start: Week) -> list[float]:
    """A guess at the prices of all rows: each day of `start` shared out by what each job adds to it."""
    prices = [0.0] * (rows.weight_row + 1)
    for shift, order in days_of(start):
        cost = board.cost(shift, order)
        rest = [(*order[:at], *order[at + 1 :]) for at in range(len(order))]
        adds = [max(1.0, min(cost, cost - board.cost(shift, each))) for each in rest]
        for job, added in zip(order, adds, strict=True):
            prices[job] = cost * added / sum(adds)
    for job in range(rows.shift_row):
        left = rows.left_out(job)
        if left.most and (not rows.weights[job] or not prices[job]):
            prices[job] = left.cost if not prices[job] else min(prices[job], left.cost)
    return prices


def blended(best: Sequence[float], latest: Sequence[float], pull: float) -> list[float]:
    """Prices between the best known and the latest: they swing less (Wentges 1997, from memory)."""
    return [pull * old + (1 - pull) * new for old, new in zip(best, latest, strict=True)]
