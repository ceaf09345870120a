"""The planner thinks about a week under way."""

import pytest

from tests.visits.services.changed_week import SEVEN
from visits.domain.planning.audit import audit_week
from visits.domain.planning.solve_limits import SolveLimits
from visits.models import WeekPlan
from visits.services.think_replan import think_replan
from visits.tasks import replan_week_task


def test_the_plan_is_proposed_with_the_problem_it_keeps(changed):
    plan = changed.planned_again(changed.lame())
    assert (plan.state, plan.percent, plan.failure) == ("proposed", 100, "")
    assert audit_week(plan.problem, plan.plan) == []


def test_thinking_again_changes_nothing(changed):
    plan = changed.planned_again(changed.lame())
    before = WeekPlan.objects.within(changed.house.scope).values().get(pk=plan.pk)
    think_replan(week_plan=plan, limits=SolveLimits(iterations=9), at=SEVEN)
    assert WeekPlan.objects.within(changed.house.scope).values().get(pk=plan.pk) == before


def test_a_newer_proposal_sets_the_older_one_aside(changed):
    old = changed.planned_again(changed.lame())
    changed.planned_again(changed.out())
    assert WeekPlan.objects.within(changed.house.scope).get(pk=old.pk).state == "set_aside"


def test_a_problem_that_cannot_be_read_fails_in_words(changed):
    plan = changed.asked(changed.lame())
    plan.problem = {**plan.problem, "jobs": "none"}
    plan.save()
    think_replan(week_plan=plan, limits=SolveLimits(iterations=9), at=SEVEN)
    stored = WeekPlan.objects.within(changed.house.scope).get(pk=plan.pk)
    assert (stored.state, stored.plan) == ("failed", None)
    assert "jobs" in stored.failure


def test_a_planner_that_breaks_down_leaves_nobody_waiting(changed):
    plan = changed.asked(changed.lame())
    with pytest.raises(TypeError):
        think_replan(week_plan=plan, limits=SolveLimits(seconds="long"), at=SEVEN)
    stored = WeekPlan.objects.within(changed.house.scope).get(pk=plan.pk)
    assert (stored.state, "What happened is kept" in stored.failure) == ("failed", True)


def test_the_job_thinks_about_the_one_plan_it_is_handed(changed):
    plan, other = changed.asked(changed.lame()), changed.asked(changed.out())
    replan_week_task(plan.pk)
    states = dict(WeekPlan.objects.within(changed.house.scope).values_list("pk", "state"))
    assert states == {plan.pk: "proposed", other.pk: "thinking"}
