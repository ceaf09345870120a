"""Plan a week: the whole of it in one call.

Up to seven jobs the best week is proven, if half the time is enough for it. Otherwise jobs are inserted by
regret, the routing engine searches, and repairs with exact timing polish what it found, in two rounds. Jobs that
must be planned come before any cost.
"""

from visits.domain.planning.board import Board
from visits.domain.planning.build_plan import build_plan
from visits.domain.planning.exact_small import MOST_JOBS, best_week
from visits.domain.planning.plan import WeekPlan
from visits.domain.planning.problem import WeekProblem
from visits.domain.planning.search_clock import SearchClock
from visits.domain.planning.search_week import search_week
from visits.domain.planning.solve_limits import Progress, ShouldStop, SolveLimits

EXACT, SEARCH = "trimops-exact", "trimops-repair+pyvrp-0.14"


def solve(
    problem: WeekProblem,
    *,
    limits: SolveLimits,
    progress: Progress | None = None,
    should_stop: ShouldStop | None = None,
) -> WeekPlan:
    """A plan that keeps every rule. `bound` is set where the plan is proven best: no plan that does as many of
    the jobs that must be done costs less.

    With `limits.iterations` the plan depends on problem, seed and iterations alone. `progress` and `should_stop`
    may be called from several threads.
    """
    clock = SearchClock(limits, progress, should_stop)
    board = Board(problem)
    best = best_week(board, lambda: clock.half_gone) if len(problem.jobs) <= MOST_JOBS else None
    week = search_week(board, clock) if best is None else best
    clock.tell(board.total(week), at_once=True)
    engine = SEARCH if best is None else EXACT
    return build_plan(
        board, week, engine=engine, seed=limits.seed, seconds=clock.gone, proven=best is not None
    )
