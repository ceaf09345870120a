"""The planner thinks, and what it proposes keeps the rules."""

from datetime import UTC, datetime, timedelta

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from tests.factories import MONDAY, make_farm, make_house, wanted
from visits.domain.planning.audit import audit_week
from visits.domain.planning.solve_limits import SolveLimits
from visits.models import WeekPlan
from visits.services import think_week_plan as thinking
from visits.services.ask_week_plan import ask_week_plan
from visits.services.think_week_plan import think_week_plan

SUNDAY_EVENING = datetime(2026, 3, 1, 19, tzinfo=UTC)
QUICK = SolveLimits(iterations=50)


def stops_of(plan):
    return [stop for shift in plan.plan["shifts"] for stop in shift["stops"]]


def test_a_thought_out_plan_is_proposed_and_passes_the_audit(house, proposed):
    visits = [wanted(house.farm), wanted(make_farm(house.business, "High Croft", by=house.owner))]
    plan = WeekPlan.objects.within(house.scope).get(pk=proposed().pk)
    assert (plan.state, plan.percent, plan.failure) == ("proposed", 100, "")
    assert audit_week(plan.problem, plan.plan) == []
    assert {stop["job"] for stop in stops_of(plan)} == {f"visit-{visit.pk}" for visit in visits}


def test_nobody_is_trimmed_while_they_milk(house, proposed):
    wanted(house.farm)
    (stop,) = stops_of(proposed())
    start, finish = (datetime.fromisoformat(stop[name]) for name in ("start", "finish"))
    assert start.hour * 60 + start.minute >= 8 * 60
    assert finish.hour * 60 + finish.minute <= 16 * 60


def test_thinking_again_about_a_proposed_plan_changes_nothing(house, proposed):
    wanted(house.farm)
    plan = proposed()
    before = WeekPlan.objects.within(house.scope).values().get(pk=plan.pk)
    think_week_plan(week_plan=plan, limits=QUICK, at=plan.asked_at + timedelta(hours=1))
    assert WeekPlan.objects.within(house.scope).values().get(pk=plan.pk) == before


def test_a_newer_proposal_sets_the_older_one_of_its_week_and_business_aside(house, proposed):
    theirs = make_house("Fell & Beck")
    other = WeekPlan.objects.create(
        business=theirs.business,
        monday=MONDAY,
        state="proposed",
        problem={},
        asked_at=datetime.fromisoformat("2026-03-01T00:00:00+00:00"),
        asked_by=theirs.owner,
    )
    wanted(house.farm)
    old, new = proposed(), proposed()
    states = dict(WeekPlan.objects.within(house.scope).values_list("pk", "state"))
    assert states == {old.pk: "set_aside", new.pk: "proposed"}
    assert WeekPlan.objects.within(theirs.scope).get(pk=other.pk).state == "proposed"


def test_a_problem_that_cannot_be_read_fails_in_words_and_proposes_nothing(house):
    plan = WeekPlan.objects.create(
        business=house.business,
        monday=MONDAY,
        problem={"format": "trimops-week-problem/1", "jobs": "none"},
        asked_at=datetime.fromisoformat("2026-03-01T00:00:00+00:00"),
        asked_by=house.owner,
    )
    think_week_plan(week_plan=plan, limits=QUICK, at=plan.asked_at)
    stored = WeekPlan.objects.within(house.scope).get(pk=plan.pk)
    assert (stored.state, stored.plan) == ("failed", None)
    assert "jobs" in stored.failure


def test_how_far_it_is_can_be_read_while_it_thinks(house):
    for n in range(12):
        wanted(make_farm(house.business, f"Farm {n}", by=house.owner, latitude=54 + n / 50))
    plan = ask_week_plan(business=house.business, monday=MONDAY, at=SUNDAY_EVENING, by=house.owner)
    with CaptureQueriesContext(connection) as asked:
        think_week_plan(week_plan=plan, limits=SolveLimits(seconds=2), at=SUNDAY_EVENING)
    told = [query["sql"] for query in asked if "UPDATE" in query["sql"] and "Best so far" in query["sql"]]
    assert told, "nothing was told between the first and the last word"
    history = WeekPlan.objects.within(house.scope).get(pk=plan.pk).cost_history
    assert len(history) >= 2
    assert [cost for _, cost in history] == sorted((cost for _, cost in history), reverse=True)
    assert history[-1][1] == pytest.approx(plan.plan["cost"]["total"], abs=0.01)
    assert WeekPlan.objects.within(house.scope).get(pk=plan.pk).state == "proposed"


def test_it_sets_out_from_the_plan_in_force(house, proposed, monkeypatch):
    """The planner itself is not replaced, only listened to."""
    set_out_from = []
    plan_it = thinking.plan_week_problem

    def listened_to(text, **wishes):
        set_out_from.append(wishes["start"])
        return plan_it(text, **wishes)

    monkeypatch.setattr(thinking, "plan_week_problem", listened_to)
    wanted(house.farm)
    first, second = proposed(), proposed()
    assert set_out_from == [None, first.plan]
    assert second.plan["cost"]["total"] <= first.plan["cost"]["total"]


def test_a_planner_that_breaks_down_leaves_nobody_waiting(house):
    wanted(house.farm)
    plan = ask_week_plan(business=house.business, monday=MONDAY, at=SUNDAY_EVENING, by=house.owner)
    with pytest.raises(TypeError):
        think_week_plan(week_plan=plan, limits=SolveLimits(seconds="long"), at=SUNDAY_EVENING)
    stored = WeekPlan.objects.within(house.scope).get(pk=plan.pk)
    assert (stored.state, stored.plan) == ("failed", None)
    assert "Ask for the plan again" in stored.failure


def test_one_whose_thinker_was_killed_before_the_reasons_gets_them_when_it_is_run_again(house, proposed):
    wanted(house.farm)
    plan = proposed()
    known, found = plan.plan, WeekPlan.objects.within(house.scope).get(pk=plan.pk)
    found.reasons = None
    found.save()
    think_week_plan(week_plan=found, limits=QUICK, at=plan.asked_at + timedelta(hours=1))
    again = WeekPlan.objects.within(house.scope).get(pk=plan.pk)
    assert (again.plan, again.reasons is not None) == (known, True)
