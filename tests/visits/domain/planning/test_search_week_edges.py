"""Weeks beyond the exact size that are odd in some way: each must end in a plan that passes the audit."""

import json
import os

import pytest
from hypothesis import HealthCheck, given, settings

from tests.bench.planning.made_up_weeks import made_up_week
from tests.visits.domain.planning.hand_made import job, planned, reasons, shift, week, window
from tests.visits.domain.planning.small_weeks import small_weeks
from visits.domain.planning.audit import audit_week

LONG = os.environ.get("TRIMOPS_LONG") == "1"
SLOW = [HealthCheck.too_slow, HealthCheck.data_too_large]
TEN = [job(f"j{at}") for at in range(10)]


@pytest.mark.parametrize(
    "problem",
    [
        week(*TEN) | {"shifts": []},
        week(*(each | {"windows": []} for each in TEN)),
        week(*(each | {"minutes": 0} for each in TEN)),
        week(*(each | {"leave_out_cost": 0} for each in TEN)),
        week(*(each | {"late_cost_per_day": 10**9, "due": "2026-01-01"} for each in TEN)),
        week(*(each | {"leave_out_cost": 10**9} for each in TEN), shifts=[shift(cost_fixed=10**9)]),
        week(*(each | {"cows": 10**6} for each in TEN)),
        week(*TEN, shifts=[shift(cost_per_work_hour=0, cost_per_km=0)]),
    ],
)
def test_an_odd_week_ends_in_a_plan_without_a_breach(problem):
    assert audit_week(problem, planned(problem, iterations=30)) == []


def test_an_overfull_day_keeps_the_jobs_that_must_be_done():
    musts = [job(f"m{at}", "far") for at in range(5)]
    choices = [job(f"c{at}", leave_out_cost=10**6) for at in range(6)]
    plan = planned(
        week(*choices, *musts, shifts=[shift(end=window("07:00", "14:00")["end"])]), iterations=200
    )
    assert set(reasons(plan)) == {f"c{at}" for at in range(6)}


@settings(max_examples=300 if LONG else 25, deadline=None, derandomize=not LONG, suppress_health_check=SLOW)
@given(small_weeks(most_jobs=14))
def test_random_weeks_beyond_the_exact_size_pass_the_audit(problem):
    assert audit_week(problem, planned(problem, iterations=40)) == []


def test_a_made_week_of_two_vans_passes_the_audit():
    problem = made_up_week(45, 2, 9)
    assert audit_week(problem, json.loads(json.dumps(planned(problem, iterations=100)))) == []
