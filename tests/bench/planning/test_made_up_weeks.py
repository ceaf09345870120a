"""The bench's own weeks, so that its ratios mean something."""

import json

import pytest

from tests.bench.planning.bench_human_rules import compared
from tests.bench.planning.made_up_weeks import made_up_week
from tests.bench.planning.week_figures import PlanWithBreach, figures
from tests.visits.domain.planning.hand_made import planned
from visits.domain.planning.read_problem import read_problem


def test_the_same_seed_makes_the_same_week_and_another_seed_another():
    assert made_up_week(15, 1, 3) == made_up_week(15, 1, 3)
    assert made_up_week(15, 1, 3) != made_up_week(15, 1, 4)


@pytest.mark.parametrize(("farms", "vans"), [(0, 1), (1, 1), (30, 1), (40, 1), (60, 3)])
def test_a_week_of_any_size_is_faultless_and_carries_the_load_asked_for(farms, vans):
    problem = made_up_week(farms, vans, 5, load=0.5)
    assert len(read_problem(json.dumps(problem)).jobs) == farms
    share = sum(job["minutes"] for job in problem["jobs"]) / (600 * 5 * vans)
    assert farms < 30 or 0.35 < share < 0.65


def test_a_week_has_every_kind_of_visit():
    jobs = [job for seed in range(5) for job in made_up_week(40, 2, seed)["jobs"]]
    for key in ("due", "leave_out_cost", "crews", "fixed"):
        assert 0 < sum(key in job for job in jobs) < len(jobs), key
    assert any(len({w["start"][:10] for w in job["windows"]}) < len(job["windows"]) for job in jobs)


def test_a_tight_week_still_holds_what_must_be_done():
    for seed in range(3):
        problem = made_up_week(30, 1, seed)
        assert figures(problem, planned(problem, iterations=60)).missing == 0


def test_the_planner_is_cheaper_than_both_rules_of_thumb():
    ours, due, area = compared(made_up_week(14, 1, 1), seconds=1.5)
    assert ours.cost < due.cost
    assert ours.cost < area.cost


def test_a_plan_with_a_breach_gives_no_figures():
    problem = made_up_week(12, 1, 1)
    plan = planned(problem, iterations=10)
    plan["cost"]["total"] -= 100
    with pytest.raises(PlanWithBreach):
        figures(problem, plan)
