"""The bench of small weeks in small, and that it can fail."""

import pytest

from tests.bench.planning.bench_small_weeks import gap, measured, proven
from tests.visits.domain.planning.brute_force import best_cost
from tests.visits.domain.planning.hand_made import job, week
from visits.domain.planning.plan import PlanCost


def test_both_ways_find_what_trying_everything_finds():
    counts = measured(25, iterations=100)
    assert counts["weeks"] == counts["proven, equal"] == counts["searched, equal"] >= 25


def test_a_breach_a_job_missed_and_an_impossible_cost_are_noticed():
    problem = week(job("a"))
    plan = proven(problem)
    musts, promises, cost = best_cost(problem)
    assert gap(problem, plan, (musts, promises, cost)) == pytest.approx(0)
    with pytest.raises(AssertionError, match="left out"):
        gap(problem, plan, (1, 0, cost))
    with pytest.raises(AssertionError, match="cheaper"):
        gap(problem, plan, (musts, promises, cost + 1))
    plan_with_wrong_cost = type(plan)(plan.zone, plan.engine, 1, 0.0, PlanCost(1.0), plan.shifts, ())
    with pytest.raises(AssertionError):
        gap(problem, plan_with_wrong_cost, (musts, promises, cost))
