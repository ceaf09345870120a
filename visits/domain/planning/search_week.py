"""The search for a week of more than a handful of jobs: three ways side by side on two cores.

Own ruin and recreate in machine code (exact costs) is good at tight weeks with meals, alternatives and visits left
out; the outside routing engine is good at long rounds; column generation with exact pricing proves the best week
of up to 64 jobs where time allows, and on the way there often finds a better one than either. After each round a
set partitioning picks the best week from every day that any search has passed through. Measured by
`tests/bench/planning`.
"""

from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field
from math import inf
from typing import NamedTuple

from visits.domain.planning.board import Board, Order, Week
from visits.domain.planning.engine_model import engine_entries, engine_model
from visits.domain.planning.engine_pyvrp import EngineSearch
from visits.domain.planning.exact.choose_days import choose_days
from visits.domain.planning.exact.pricing import MOST_JOBS
from visits.domain.planning.exact.prove_week import Proof, prove_week
from visits.domain.planning.insertion import insert_all
from visits.domain.planning.search_clock import SearchClock
from visits.domain.planning.swift.machine import Share, SwiftSearch

FIRST_ENDS, FIRST_SECONDS_PER_JOB = 0.5, 0.1
"""The first round, in which both cores search from scratch, takes this share, or less where the week is small."""
ENGINE_ENDS, LAST_ENDS = 0.7, 0.96
HOT, WARM, COLD = 1.0, 0.4, 0.03
"""Heat at the beginning of the first and of later rounds, and at the end; as a share of a visit's usual cost."""
SEARCHES = 2
ENGINE_STEPS = 4
"""With iterations for a limit, the own search takes so many steps for each one of the engine's."""
CHOICE_SHARE, CHOICE_NODES = 0.03, 200
MOST_ENTRIES = 15_000_000
"""Beyond so many arcs (about 60 farms, 3 vans, a meal each day) the engine's tables grow past 500 MB."""
LARGEST = 2**40
"""Beyond such a cost on an arc the engine's sums could overflow: then it is left aside."""

Runner = Callable[[], Week]


class Found(NamedTuple):
    """The best week; `bound` is the cost (as in a plan document) that no plan which does as many of the jobs that
    must be done can undercut, where something was proven."""

    week: Week
    bound: float | None = None


def search_week(board: Board, clock: SearchClock, start: Week | None = None) -> Found:
    """The best week found within the clock's limits, never worse than `start` (a week that keeps the rules)."""
    return WeekSearch(board, clock).best_from(start)


@dataclass
class WeekSearch:
    """The rounds of one search."""

    board: Board
    clock: SearchClock
    best: Week = field(init=False)
    usual: float = field(init=False, default=0.0)
    proof: Proof | None = field(init=False, default=None)
    own: list[SwiftSearch] = field(init=False)

    def __post_init__(self) -> None:
        seed = self.clock.limits.seed
        self.own = [SwiftSearch(self.board, seed * SEARCHES + each) for each in range(SEARCHES)]

    def best_from(self, start: Week | None) -> Found:
        """All rounds, one after another; the end comes early where the best week is proven."""
        limits = self.clock.limits
        self.best = self._filled(start)
        placed = sum(len(order) for order in self.best)
        self.usual = sum(self.board.cost(at, order) for at, order in enumerate(self.best)) / max(1, placed)
        first = min(FIRST_ENDS * limits.seconds, FIRST_SECONDS_PER_JOB * len(self.board.problem.jobs))
        self._side_by_side([self._swift(search, first, HOT) for search in self.own])
        last = LAST_ENDS * limits.seconds
        if self._may_prove():
            self._side_by_side([self._engine_then_swift(last), self._proving(last)])
        else:
            self._side_by_side([self._swift(self.own[0], last, WARM), self._engine_then_swift(last)])
        self.best = topped_up(self.board, self.best)
        return Found(self.best, self._bound())

    def _filled(self, start: Week | None) -> Week:
        """The start, mended, with each waiting job put in where that pays; what every search begins with."""
        nothing: list[Order] = [() for _ in self.board.problem.shifts]
        begun = mended(self.board, start) if start is not None else tuple(nothing)
        self.own[0].begin_with(begun)
        self.own[0].run(lambda steps: 0.0 if steps == 0 else 1.0, 0.0, 0.0)
        return self.own[0].best()

    def _may_prove(self) -> bool:
        """A proof runs by the clock, so not where a plan must repeat by iterations; it knows no surcharge."""
        by_the_clock = self.clock.limits.iterations is None
        return by_the_clock and not self.board.surcharge and len(self.board.problem.jobs) <= MOST_JOBS

    def _bound(self) -> float | None:
        return None if self.proof is None or self.proof.bound <= 0 else self.proof.bound

    def _over(self) -> bool:
        return self.clock.stopped or (self.proof is not None and self.proof.closed)

    def _share(self, ends: float, steps: int, cost: Callable[[], float]) -> Share:
        share = self.clock.until(ends, steps, cost)
        return lambda done: 1.0 if self._over() else share(done)

    def _swift(self, search: SwiftSearch, ends: float, hot: float) -> Runner:
        steps = (self.clock.limits.iterations or 0) * ENGINE_STEPS // 2

        def run() -> Week:
            return self._cooled(search, self.best, self._share(ends, steps, lambda: search.cost), hot)

        return run

    def _cooled(self, search: SwiftSearch, week: Week, share: Share, hot: float) -> Week:
        search.begin_with(week)
        search.run(share, hot * self.usual, COLD * self.usual)
        return search.best()

    def _engine_then_swift(self, ends: float) -> Runner:
        """The engine for half of the way where it can be used, then the own search from the better of both."""
        engine = self._engine(ENGINE_ENDS / LAST_ENDS * ends)
        search = self.own[1]
        swift = self._swift(search, ends, WARM)

        def run() -> Week:
            if engine is None:
                return swift()
            found = engine()
            if self.clock.limits.iterations is not None:
                return found
            better = min(found, self.best, key=self.board.total)
            return self._cooled(search, better, self._share(ends, 0, lambda: search.cost), WARM)

        return run

    def _engine(self, ends: float) -> Runner | None:
        if self.clock.stopped or engine_entries(self.board) > MOST_ENTRIES:
            return None
        model = engine_model(self.board)
        dearest = max((cost for arcs in model.arcs for cost, _ in arcs.values()), default=0)
        if not any(node.job is not None for node in model.nodes) or dearest > LARGEST:
            return None
        engine, cost = EngineSearch(model, self.best), self.board.total(self.best)
        steps = (self.clock.limits.iterations or 0) // 2

        def run() -> Week:
            share, done = self._share(ends, steps, lambda: cost), 0

            def stop(_: float) -> bool:
                nonlocal done
                done += 1
                return share(done - 1) >= 1

            return mended(self.board, engine.run(self.clock.limits.seed % 2**31, stop))

        return run

    def _proving(self, ends: float) -> Runner:
        pool = self._days_seen()  # because: read before another search writes on

        def run() -> Week:
            seconds = max(0.0, ends - self.clock.gone)
            self.proof = prove_week(self.board, self.best, seconds, lambda: self.clock.stopped, pool)
            return self.proof.week

        return run

    def _side_by_side(self, runners: list[Runner]) -> None:
        with ThreadPoolExecutor(len(runners)) as pool:
            weeks = [run.result() for run in [pool.submit(runner) for runner in runners]]
        self.best = min([self.best, *weeks], key=self.board.total)
        if not self._over():
            nodes = None if self.clock.limits.iterations is None else CHOICE_NODES
            seconds = self.clock.limits.seconds * CHOICE_SHARE
            self.best = choose_days(self.board, self._days_seen(), self.best, seconds, nodes=nodes)
        self.clock.tell(self.board.total(self.best))

    def _days_seen(self) -> dict[tuple[int, frozenset[int]], tuple[float, Order]]:
        pool: dict[tuple[int, frozenset[int]], tuple[float, Order]] = {}
        for search in self.own:
            for key, (cost, order) in search.days_seen():
                if cost < pool.get(key, (inf, ()))[0]:
                    pool[key] = cost, order
        return pool


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
