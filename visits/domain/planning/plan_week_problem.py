"""A problem document to a plan document, checked by the independent audit before anyone sees it."""

from collections.abc import Mapping

from visits.domain.planning.plan_to_json import plan_to_json
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.solve import solve
from visits.domain.planning.solve_limits import Progress, ShouldStop, SolveLimits
from visits.domain.planning.stored_week import audited, week_of_document


def plan_week_problem(
    text: str,
    *,
    limits: SolveLimits,
    progress: Progress | None = None,
    should_stop: ShouldStop | None = None,
    start: Mapping[str, object] | None = None,
) -> tuple[dict[str, object], tuple[str, ...]]:
    """The plan document for the problem in `text`, and notes on what was rounded on reading.

    `start` is a plan document to set out from; what this problem no longer has is passed over.
    Raises ProblemFaults for a malformed problem and PlanBreaksRules where the audit finds a breach.
    """
    problem = read_problem(text)
    begun = None if start is None else week_of_document(problem, start)
    plan = solve(problem, limits=limits, progress=progress, should_stop=should_stop, start=begun)
    return audited(text, plan_to_json(plan)), problem.notes
