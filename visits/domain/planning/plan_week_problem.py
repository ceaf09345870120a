"""A problem document to a plan document, checked by the independent audit before anyone sees it."""

import json

from visits.domain.planning.audit import audit_week
from visits.domain.planning.plan_to_json import plan_to_json
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.solve import solve
from visits.domain.planning.solve_limits import Progress, ShouldStop, SolveLimits


class PlanBreaksRules(Exception):
    """The solver's plan did not pass the audit: a fault of the program, never of the user."""


def plan_week_problem(
    text: str,
    *,
    limits: SolveLimits,
    progress: Progress | None = None,
    should_stop: ShouldStop | None = None,
) -> tuple[dict[str, object], tuple[str, ...]]:
    """The plan document for the problem in `text`, and notes on what was rounded on reading.

    Raises ProblemFaults for a malformed problem and PlanBreaksRules where the audit finds a breach.
    """
    problem = read_problem(text)
    plan = solve(problem, limits=limits, progress=progress, should_stop=should_stop)
    document = plan_to_json(plan)
    breaches = audit_week(json.loads(text), json.loads(json.dumps(document)))
    if breaches:
        raise PlanBreaksRules("\n".join(breaches))
    return document, problem.notes
