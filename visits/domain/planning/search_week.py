"""The search for a week of more than a handful of jobs: insert, repair, let the engine search, polish exactly."""

from concurrent.futures import ThreadPoolExecutor
from math import inf
from random import Random

from visits.domain.planning.board import Board, Order, Week
from visits.domain.planning.engine_model import engine_model
from visits.domain.planning.engine_pyvrp import EngineSearch, Stop
from visits.domain.planning.insertion import by_regret, insert_all
from visits.domain.planning.repair_search import RepairSearch
from visits.domain.planning.search_clock import SearchClock

FIRST_REPAIR = 0.08
ROUNDS = ((0.5, 0.56), (0.9, 1.0))
"""Shares of the seconds at which the engine and then the repair hand over, round by round."""
STEPS_PER_REPAIR = 10
"""With iterations for a limit, each repair gets one step for so many of the engine's."""
SEARCHES = 2
"""Engine searches with seeds of their own, side by side."""
LARGEST = 2**40
"""Beyond such a cost on an arc the engine's sums could overflow: then the repair works alone."""


def search_week(board: Board, clock: SearchClock) -> Week:
    """The best week found within the clock's limits. Never worse than insertion by regret."""
    empty: list[Order] = [() for _ in board.problem.shifts]
    start = by_regret(board, empty, set(range(len(board.problem.jobs))))
    week = _repaired(board, start, clock, FIRST_REPAIR, 0)
    for number, (engine_ends, repair_ends) in enumerate(ROUNDS):
        searched = _engine_weeks(board, week, clock, number, engine_ends)
        best = min([week, *(_mended(board, each) for each in searched)], key=board.total)
        week = _mended(board, _repaired(board, list(best), clock, repair_ends, number + 1))
    return week


def _repaired(board: Board, start: list[Order], clock: SearchClock, share: float, stage: int) -> Week:
    limits = clock.limits
    search = RepairSearch(board, start, Random(f"{limits.seed}-{stage}"))
    steps = (limits.iterations or 0) // STEPS_PER_REPAIR
    search.run(clock.until(limits.seconds * share, steps, lambda: search.best_cost))
    return tuple(search.best)


def _engine_weeks(board: Board, start: Week, clock: SearchClock, number: int, ends: float) -> list[Week]:
    model = engine_model(board)
    dearest = max((cost for arcs in model.arcs for cost, _ in arcs.values()), default=0)
    if not any(node.job is not None for node in model.nodes) or dearest > LARGEST or clock.stopped:
        return []
    engine = EngineSearch(model, start)
    cost = board.total(start)
    first = (clock.limits.seed * len(ROUNDS) + number) * SEARCHES
    with ThreadPoolExecutor(SEARCHES) as pool:
        runs = [
            pool.submit(engine.run, (first + each) % 2**31, _stop(clock, ends, cost))
            for each in range(SEARCHES)
        ]
        return [run.result() for run in runs]


def _stop(clock: SearchClock, ends: float, cost: float) -> Stop:
    steps_each = (clock.limits.iterations or 0) // len(ROUNDS)
    share = clock.until(clock.limits.seconds * ends, steps_each, lambda: cost)
    steps = 0

    def stop(_: float) -> bool:
        nonlocal steps
        steps += 1
        return share(steps - 1) >= 1

    return stop


def _mended(board: Board, week: Week) -> Week:
    """Without the jobs that make an order break a rule, and with each job put back that has a spot worth it."""
    kept = [_kept(board, shift, order) for shift, order in enumerate(week)]
    planned = {job for order in kept for job in order}
    out = [job for job in range(len(board.problem.jobs)) if job not in planned]
    out.sort(key=lambda job: -board.out_cost(job))
    return tuple(insert_all(board, kept, out))


def _kept(board: Board, shift: int, order: Order) -> Order:
    """The order itself if it can be done; else what is left when jobs that cannot follow are passed over."""
    if board.cost(shift, order) < inf:
        return order
    kept: Order = ()
    for job in order:
        if board.cost(shift, (*kept, job)) < inf:
            kept = (*kept, job)
    return kept
