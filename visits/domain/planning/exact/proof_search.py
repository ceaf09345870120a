"""The search for a proof: the relaxed week, then whole weeks of more and more days.

The relaxed week gives a bound and prices. A day whose cost after prices is `slack` above its shift's least is only in
weeks that cost at least the bound plus the slack. So all days within a slack are listed and the best choice among
them is made; the slack grows until it reaches the gap. After Baldacci, Christofides and Mingozzi 2008, from memory.
"""

from collections.abc import Iterable

from visits.domain.planning.board import Board, Order, Week
from visits.domain.planning.exact.choose_days import choose_days
from visits.domain.planning.exact.column_generation import ColumnGeneration, Pool
from visits.domain.planning.exact.pricing import Day, Way
from visits.domain.planning.exact.time_left import TimeLeft
from visits.domain.planning.exact.week_rows import days_of, document_cost, left_by, weight_left_by

FIRST_SLACK = 0.003
"""Of the cost of the week."""
SAME = 5e-5
"""Costs nearer than this are written alike in a plan."""
SLICES = (0.4, 0.6, 0.8)
"""Of the time left: after each, whatever days have been seen are put together, so that a short proof finds as well."""
MOST_DAYS = 100_000
"""Days of a shift listed at once."""


class ProofSearch:
    """`week` is the best found; no week costs less than `bound` that leaves out no more weight than `start`.

    Costs are those of a plan document plus `weight_price` per weight left out; where all are multiples of `grain`
    and more, a gap below it is none.
    """

    def __init__(
        self,
        board: Board,
        start: Week,
        time: TimeLeft,
        weight_price: float = 0.0,
        grain: float = SAME,
        pool: Pool | None = None,
    ) -> None:
        self.board, self.week, self.time = board, start, time
        self.weight_price, self.grain = weight_price, grain
        self.weight = weight_left_by(board, start)
        self.prices = ColumnGeneration(board, start, weight_price, pool)
        self.bound = 0.0

    @property
    def cost(self) -> float:
        """Of the best week found."""
        return document_cost(self.board, self.week) + self.weight_price * weight_left_by(
            self.board, self.week
        )

    @property
    def weight_falls(self) -> bool:
        """A week was found that does more of the jobs that must be done."""
        return weight_left_by(self.board, self.week) < self.weight

    @property
    def closed(self) -> bool:
        """No week that leaves out as little costs less."""
        return self.cost - self.bound < self.grain

    def run(self) -> None:
        """Relaxed first, with a choice among the days seen where time gets short; then whole, with more and more
        slack."""
        for share in SLICES:
            self.prices.run(TimeLeft(self.time.left * share, self.time.should_stop))
            self.bound = max(self.bound, self.prices.bound)
            self._choose([*self.prices.seen, *self.prices.days])
            if self.prices.finished:
                break
        slack = FIRST_SLACK * self.cost
        while self.prices.finished and not (self.closed or self._changed or self.time.over):
            if not self._within(min(slack, self.cost - self.prices.bound) + SAME):
                return
            slack *= 2

    @property
    def _changed(self) -> bool:
        """The rows no longer fit what was found: begin again from there."""
        return self.weight_falls and not self.weight_price

    def _choose(self, days: Iterable[Day]) -> None:
        pool: dict[tuple[int, frozenset[int]], tuple[float, Order]] = {}
        for day in sorted(days, key=lambda day: -day.cost):  # the cheapest of each set of jobs comes last
            pool[day.shift, frozenset(day.order)] = day.cost, day.order
        self.week = choose_days(self.board, pool, self.week, self.time.left / 4)

    def _within(self, slack: float) -> bool:
        """All days within the slack, and the best choice of them; false where there are too many."""
        prices = self.prices
        limits = [least + slack for least in prices.least]
        found = prices.pricing.best_days(prices.prices, limits, MOST_DAYS, Way.EVERY, self.time)
        if not all(each.whole and len(each.days) < MOST_DAYS for each in found):
            return False
        # because: the week's own days may have cheaper orders among those found, so both are offered
        own = [Day(shift, self.board.cost(shift, order), order) for shift, order in days_of(self.week)]
        self._take_best(own, [day for each in found for day in each.days], prices.bound + slack)
        return True

    def _take_best(self, own: list[Day], others: list[Day], beyond: float) -> None:
        """The best choice of these days; weeks with other days cost at least `beyond`. `own` are those of the week."""
        rows, days = self.prices.rows, [*own, *others]
        model = rows.model()
        model.add([rows.day(day.shift, day.order, day.cost) for day in days])
        start = [*left_by(self.board, self.week), *range(rows.shift_row, rows.shift_row + len(own))]
        chosen = model.chosen(start, self.time.left)
        week: list[Order] = [()] * len(self.week)
        for column in chosen.columns:
            if column >= rows.shift_row:
                day = days[column - rows.shift_row]
                week[day.shift] = day.order
        self.week = min(self.week, tuple(week), key=self.board.total)
        self.bound = max(self.bound, min(chosen.bound - SAME / 2, beyond))
