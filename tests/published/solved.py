"""The planner's own plan of a week document, refused where the audit finds a breach."""

import json

from visits.domain.planning.plan_week_problem import plan_week_problem
from visits.domain.planning.solve_limits import SolveLimits


def solved(problem: dict, *, seconds: float = 10.0, iterations: int | None = None) -> dict:
    """The plan document; PlanBreaksRules where it breaks a rule."""
    limits = SolveLimits(seconds=seconds, iterations=iterations)
    plan, _ = plan_week_problem(json.dumps(problem), limits=limits)
    return json.loads(json.dumps(plan))
