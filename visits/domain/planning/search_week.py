"""The search for a week of more than a handful of jobs: two searches side by side, and the best of all days seen.

Own ruin and recreate in machine code (exact costs) and the outside routing engine are good at different weeks:
the first at tight weeks with meals, alternatives and visits left out, the second at long rounds. They run in
rounds on both cores; after each round a set partitioning picks the best week from every day that any search has
passed through. Measured by `tests/bench/planning`.
"""

from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field
from math import inf

from visits.domain.planning.board import Board, Order, Week
from visits.domain.planning.engine_model import engine_entries, engine_model
from visits.domain.planning.engine_pyvrp import EngineSearch
from visits.domain.planning.exact.choose_days import choose_days
from visits.domain.planning.insertion import insert_all
from visits.domain.planning.search_clock import SearchClock
from visits.domain.planning.swift.machine import SwiftSearch


@dataclass(frozen=True)
class Round:
    """Ends at a share of the seconds; `hot` is the heat it begins with, as a share of a visit's usual cost."""

    ends: float
    hot: float
    with_engine: bool


ROUNDS = (Round(0.45, 2.0, with_engine=False), Round(0.95, 0.2, with_engine=True))
COLD = 0.01
SEARCHES = 2
ENGINE_STEPS = 4
"""With iterations for a limit, the own search takes so many steps for each one of the engine's."""
CHOICE_SHARE = 0.04
CHOICE_NODES = 200
MOST_ENTRIES = 15_000_000
"""Beyond so many arcs (about 60 farms, 3 vans, a meal each day) the engine's tables grow past 500 MB."""
LARGEST = 2**40
"""Beyond such a cost on an arc the engine's sums could overflow: then it is left aside."""

Runner = Callable[[], Week]


def search_week(board: Board, clock: SearchClock, start: Week | None = None) -> Week:
    """The best week found within the clock's limits, never worse than `start` (a week that keeps the rules)."""
    return WeekSearch(board, clock).best_from(start)


@dataclass
class WeekSearch:
    """The rounds of one search."""

    board: Board
    clock: SearchClock
    best: Week = field(init=False)
    own: list[SwiftSearch] = field(init=False)

    def __post_init__(self) -> None:
        seed = self.clock.limits.seed
        self.own = [SwiftSearch(self.board, seed * SEARCHES + each) for each in range(SEARCHES)]

    def best_from(self, start: Week | None) -> Week:
        """All rounds, one after another."""
        self.best = self._filled(start)
        usual = self._usual_cost()
        for number, each in enumerate(ROUNDS):
            self._take_best([self.best, *self._side_by_side(self._runners(each, number, usual))])
            self._choose()
        self.best = topped_up(self.board, self.best)
        return self.best

    def _filled(self, start: Week | None) -> Week:
        """The start, mended, with each waiting job put in where that pays; what every search begins with."""
        nothing: list[Order] = [() for _ in self.board.problem.shifts]
        first = self.own[0]
        begun = mended(self.board, start) if start is not None else tuple(nothing)
        first.begin_with(begun)
        first.run(lambda steps: 0.0 if steps == 0 else 1.0, 0.0, 0.0)
        return first.best()

    def _usual_cost(self) -> float:
        placed = sum(len(order) for order in self.best)
        return sum(self.board.cost(shift, order) for shift, order in enumerate(self.best)) / max(1, placed)

    def _runners(self, each: Round, number: int, usual: float) -> list[Runner]:
        own = [self._own_runner(search, each, usual) for search in self.own]
        engine = self._engine_runner(each, number) if each.with_engine else None
        return [own[0], engine or own[1]]

    def _own_runner(self, search: SwiftSearch, each: Round, usual: float) -> Runner:
        steps = (self.clock.limits.iterations or 0) * ENGINE_STEPS // len(ROUNDS)

        def run() -> Week:
            search.begin_with(self.best)
            share = self.clock.until(self._seconds(each), steps, lambda: search.cost)
            search.run(share, each.hot * usual, COLD * usual)
            return search.best()

        return run

    def _engine_runner(self, each: Round, number: int) -> Runner | None:
        if self.clock.stopped or engine_entries(self.board) > MOST_ENTRIES:
            return None
        model = engine_model(self.board)
        dearest = max((cost for arcs in model.arcs for cost, _ in arcs.values()), default=0)
        if not any(node.job is not None for node in model.nodes) or dearest > LARGEST:
            return None
        engine, cost = EngineSearch(model, self.best), self.board.total(self.best)
        steps = (self.clock.limits.iterations or 0) // len(ROUNDS)
        seed = (self.clock.limits.seed * len(ROUNDS) + number) % 2**31

        def run() -> Week:
            share, done = self.clock.until(self._seconds(each), steps, lambda: cost), 0

            def stop(_: float) -> bool:
                nonlocal done
                done += 1
                return share(done - 1) >= 1

            return mended(self.board, engine.run(seed, stop))

        return run

    def _seconds(self, each: Round) -> float:
        return self.clock.limits.seconds * each.ends

    def _side_by_side(self, runners: list[Runner]) -> list[Week]:
        with ThreadPoolExecutor(len(runners)) as pool:
            return [run.result() for run in [pool.submit(runner) for runner in runners]]

    def _take_best(self, weeks: list[Week]) -> None:
        self.best = min(weeks, key=self.board.total)

    def _choose(self) -> None:
        """The best week that the days of all searches make."""
        pool: dict[tuple[int, frozenset[int]], tuple[float, Order]] = {}
        for search in self.own:
            for key, (cost, order) in search.days_seen():
                if cost < pool.get(key, (inf, ()))[0]:
                    pool[key] = cost, order
        nodes = None if self.clock.limits.iterations is None else CHOICE_NODES
        seconds = self.clock.limits.seconds * CHOICE_SHARE
        if not self.clock.stopped:
            self.best = choose_days(self.board, pool, self.best, seconds, nodes=nodes)
        self.clock.tell(self.board.total(self.best))


def mended(board: Board, week: Week) -> Week:
    """Without the jobs that make an order break a rule, and with each job put back that has a spot worth it."""
    return topped_up(board, tuple(_kept(board, shift, order) for shift, order in enumerate(week)))


def topped_up(board: Board, week: Week) -> Week:
    """Each job left out put in where that costs less, until none has such a spot."""
    while True:
        planned = {job for order in week for job in order}
        out = [job for job in range(len(board.problem.jobs)) if job not in planned]
        fuller = tuple(insert_all(board, week, sorted(out, key=lambda job: -board.out_cost(job))))
        if fuller == week:
            return week
        week = fuller


def _kept(board: Board, shift: int, order: Order) -> Order:
    """The order itself if it can be done; else what is left when jobs that cannot follow are passed over."""
    if board.cost(shift, order) < inf:
        return order
    kept: Order = ()
    for job in order:
        if board.cost(shift, (*kept, job)) < inf:
            kept = (*kept, job)
    return kept
