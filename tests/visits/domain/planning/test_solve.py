"""The whole solver against trying everything, on small random weeks."""

import json
import os

from hypothesis import HealthCheck, given, settings

from tests.visits.domain.planning.brute_force import best_cost
from tests.visits.domain.planning.small_weeks import small_weeks
from visits.domain.planning.audit import audit_week
from visits.domain.planning.plan_to_json import plan_to_json
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.solve import solve
from visits.domain.planning.solve_limits import SolveLimits

LONG = os.environ.get("TRIMOPS_LONG") == "1"
SLOW = [HealthCheck.too_slow, HealthCheck.data_too_large, HealthCheck.filter_too_much]


def missing(problem, plan):
    """How many jobs that must be planned, and how many promises, the plan leaves out."""
    out = {each["job"] for each in plan["left_out"]}
    musts = {job["id"] for job in problem["jobs"] if "leave_out_cost" not in job or "fixed" in job}
    return len(musts & out), len({job["id"] for job in problem["jobs"] if "fixed" in job} & out)


@settings(max_examples=2000 if LONG else 100, deadline=None, derandomize=not LONG, suppress_health_check=SLOW)
@given(small_weeks(most_jobs=6 if LONG else 4))
def test_a_small_week_costs_what_trying_everything_finds_and_passes_the_audit(problem):
    plan = plan_to_json(solve(read_problem(json.dumps(problem)), limits=SolveLimits(iterations=5)))
    musts, promises, cost = best_cost(problem)
    assert missing(problem, plan) == (musts, promises)
    assert abs(plan["cost"]["total"] - cost) < 0.01
    assert plan["bound"] == plan["cost"]["total"]
    assert audit_week(problem, json.loads(json.dumps(plan))) == []
