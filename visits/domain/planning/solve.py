"""Plan a week: the whole of it in one call.

Up to seven jobs the best week is proven, if half the time is enough for it. Beyond, `search_week` searches from the
best start there is, and proves what it can on the way. Jobs that must be planned come before any cost.
"""

from collections.abc import Mapping

from visits.domain.planning.board import Board, Week
from visits.domain.planning.build_plan import build_plan
from visits.domain.planning.exact import pricing
from visits.domain.planning.exact_small import MOST_JOBS, best_week
from visits.domain.planning.plan import WeekPlan
from visits.domain.planning.problem import WeekProblem
from visits.domain.planning.search_clock import SearchClock
from visits.domain.planning.search_week import search_week
from visits.domain.planning.solve_limits import Progress, ShouldStop, SolveLimits
from visits.domain.planning.swift import machine as swift

EXACT, SEARCH = "trimops-exact", "trimops-swift+pyvrp-0.14"


def ready_to_search() -> None:
    """Load everything compiled; compile it where this machine has not yet done so."""
    swift.make_ready()
    pricing.make_ready()


def solve(
    problem: WeekProblem,
    *,
    limits: SolveLimits,
    progress: Progress | None = None,
    should_stop: ShouldStop | None = None,
    start: Week | None = None,
    surcharge: Mapping[tuple[int, int], float] | None = None,
) -> WeekPlan:
    """A plan that keeps every rule. `bound` is what no plan that does as many of the jobs that must be done can
    undercut, where that was proven in time; equal to the cost, the plan is proven best.

    `start` is a week to set out from (orders of job indexes, one per shift), such as yesterday's plan; a plan is
    never dearer than what is left of it. `surcharge` is money per (job, shift) that the search weighs beside the
    costs of the contract: the price of change. The plan's own costs do not hold it, and with it nothing is proven.
    With `limits.iterations` the plan depends on problem, start, seed and iterations alone. `progress` and
    `should_stop` may be called from several threads. The first search on a machine compiles for about a
    minute, which is not counted in the seconds.
    """
    board = Board(problem, surcharge=surcharge or {})
    clock = SearchClock(limits, progress, should_stop)
    best = best_week(board, lambda: clock.half_gone) if len(problem.jobs) <= MOST_JOBS else None
    week, bound = best, None
    if week is None:
        clock.wait_for(ready_to_search)
        week, bound = search_week(board, clock, start)
    clock.tell(board.total(week), at_once=True)
    return build_plan(
        Board(problem) if surcharge else board,
        week,
        engine=SEARCH if best is None else EXACT,
        seed=limits.seed,
        seconds=clock.gone,
        proven=best is not None and not surcharge,
        bound=bound,
    )
