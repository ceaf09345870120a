"""Weeks whose every figure is finer than the contract's grain: rounding never makes a breach the audit sees."""

import json
import os

import pytest

from tests.visits.domain.planning.fine_weeks import fine_week
from visits.domain.planning.plan_week_problem import plan_week_problem
from visits.domain.planning.solve_limits import SolveLimits

SHARES = 100 if os.environ.get("TRIMOPS_LONG") == "1" else 2


@pytest.mark.parametrize("share", range(SHARES))
def test_weeks_off_the_grid_are_planned_and_pass_the_audit(share):
    planned = 0
    for seed in range(100 * share, 100 * share + 100):
        plan, notes = plan_week_problem(json.dumps(fine_week(seed)), limits=SolveLimits(iterations=10))
        assert notes
        planned += bool(plan["shifts"])
    assert planned > 50
