import json
import subprocess
import sys

import pytest

from tests.bench.planning.made_up_weeks import made_up_week
from tests.visits.domain.planning.hand_made import board, job, week
from visits.domain.planning.build_plan import build_plan
from visits.domain.planning.exact import prove_plan
from visits.domain.planning.exact.prove_plan import bound_of_plan
from visits.domain.planning.exact_small import best_week
from visits.domain.planning.plan_to_json import plan_to_json

PLAIN = week(job("a"), job("b", "far"), job("c", "middle", leave_out_cost=1))


def planned(problem, orders=None):
    made = board(problem)
    plan = build_plan(made, orders or best_week(made), engine="test", seed=0, seconds=0, proven=False)
    return json.dumps(problem), plan_to_json(plan)


def test_the_bound_of_the_best_plan_is_its_cost():
    text, plan = planned(PLAIN)
    assert bound_of_plan(text, plan, 20) == pytest.approx(plan["cost"]["total"], abs=1e-3)


def test_a_dearer_plan_gets_the_cost_of_the_best_one_too():
    _, best = planned(PLAIN)
    text, dear = planned(PLAIN, ((1, 0, 2),))
    assert dear["cost"]["total"] > best["cost"]["total"]
    assert bound_of_plan(text, dear, 20) == pytest.approx(best["cost"]["total"], abs=1e-3)


def test_a_plan_that_does_too_little_is_not_told_more_than_its_own_cost():
    text, lazy = planned(PLAIN, ((),))
    assert bound_of_plan(text, lazy, 20) == lazy["cost"]["total"] == 1


def test_without_time_nothing_is_claimed():
    text, plan = planned(PLAIN)
    assert bound_of_plan(text, plan, 0) is None


def test_a_week_too_large_is_not_tried(monkeypatch):
    monkeypatch.setattr(prove_plan, "MOST_JOBS", 2)
    text, plan = planned(PLAIN)
    assert bound_of_plan(text, plan, 20) is None


def test_who_says_stop_gets_what_is_proven_by_then():
    problem = made_up_week(12, 1, 3)
    made = board(problem)
    text, plan = planned(problem, tuple(() for _ in made.problem.shifts))
    assert bound_of_plan(text, plan, 20, lambda: True) is None


def test_the_web_process_loads_no_engine_by_importing_it():
    text = (
        "import sys, visits.services.prove_week_plan as _\n"
        "sys.exit(bool({'numba', 'highspy', 'pyvrp', 'numpy'} & set(sys.modules)))"
    )
    text = (
        "import os, django; os.environ['DJANGO_SETTINGS_MODULE'] = 'trimops.settings.test'; django.setup()\n"
        + text
    )
    assert subprocess.run([sys.executable, "-c", text], check=False).returncode == 0
