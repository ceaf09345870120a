import json

import pytest

from tests.visits.domain.planning.hand_made import job, week
from visits.domain.planning import plan_week_problem as module
from visits.domain.planning.solve_limits import SolveLimits
from visits.domain.planning.stored_week import PlanBreaksRules


def test_a_problem_becomes_a_plan_document_with_its_notes():
    plan, notes = module.plan_week_problem(json.dumps(week(job("a", minutes=1 / 7))), limits=SolveLimits())
    assert plan["shifts"][0]["stops"][0]["job"] == "a"
    assert notes == ("jobs[0].minutes: rounded to a tenth of a second",)


def test_a_plan_that_breaks_a_rule_is_never_handed_over(monkeypatch):
    monkeypatch.setattr(module, "plan_to_json", lambda plan: {"format": "trimops-week-plan/1"})
    with pytest.raises(PlanBreaksRules):
        module.plan_week_problem(json.dumps(week(job("a"))), limits=SolveLimits())
