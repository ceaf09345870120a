"""What nobody can undercut is proven and kept with the plan."""

from tests.factories import make_farm, wanted
from trimops.jobs import Job
from visits.domain.planning.audit import audit_week
from visits.models import WeekPlan
from visits.services import prove_week_plan as proving
from visits.services.prove_week_plan import prove_week_plan
from visits.tasks import prove_week_task


def kept(house, plan):
    return WeekPlan.objects.within(house.scope).get(pk=plan.pk)


def unproven(house, proposed):
    """A proposal of two visits whose bound was taken away."""
    wanted(house.farm)
    wanted(make_farm(house.business, "High Croft", by=house.owner))
    plan = proposed()
    plan.plan["bound"] = None
    plan.save()
    return plan


def test_the_bound_of_a_best_plan_is_its_own_cost(house, proposed):
    plan = unproven(house, proposed)
    prove_week_plan(week_plan=plan, seconds=20)
    row = kept(house, plan)
    assert abs(row.plan["bound"] - row.plan["cost"]["total"]) < 0.01
    assert audit_week(row.problem, row.plan) == []


def test_only_the_bound_changes(house, proposed):
    plan = unproven(house, proposed)
    before = dict(kept(house, plan).plan)
    prove_week_plan(week_plan=plan, seconds=20)
    after = kept(house, plan).plan
    assert {**after, "bound": None} == before


def test_a_bound_that_says_less_is_not_written(house, proposed, monkeypatch):
    plan = unproven(house, proposed)
    plan.plan["bound"] = 50
    plan.save()
    monkeypatch.setattr(proving, "bound_of_plan", lambda *given: 49.0)
    prove_week_plan(week_plan=plan, seconds=1)
    assert kept(house, plan).plan["bound"] == 50


def test_nothing_proven_leaves_the_plan_as_it_is(house, proposed, monkeypatch):
    plan = unproven(house, proposed)
    monkeypatch.setattr(proving, "bound_of_plan", lambda *given: None)
    prove_week_plan(week_plan=plan, seconds=1)
    assert kept(house, plan).plan["bound"] is None


def test_a_plan_changed_meanwhile_keeps_its_own_figures(house, proposed, monkeypatch):
    plan = unproven(house, proposed)
    row = kept(house, plan)
    row.plan = {**row.plan, "engine": "another"}
    row.save()
    monkeypatch.setattr(proving, "bound_of_plan", lambda *given: 1.0)
    prove_week_plan(week_plan=plan, seconds=1)
    assert kept(house, plan).plan["bound"] is None


def test_a_week_without_a_plan_is_passed_over(house, proposed, monkeypatch):
    plan = unproven(house, proposed)
    plan.plan = None
    plan.save()
    monkeypatch.setattr(proving, "bound_of_plan", None)
    assert prove_week_plan(week_plan=plan, seconds=1).plan is None


def test_the_job_proves_the_plan_it_is_handed(house, proposed, monkeypatch):
    plan = unproven(house, proposed)
    monkeypatch.setattr(proving, "bound_of_plan", lambda *given: 1.5)
    prove_week_task(plan.pk)
    assert kept(house, plan).plan["bound"] == 1.5
    assert Job.PROVE_WEEK.runs_apart
