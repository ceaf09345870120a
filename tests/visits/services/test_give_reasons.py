"""A plan that was found knows why it is as it is."""

import json
from datetime import UTC, datetime, timedelta

from tests.factories import make_farm, wanted
from visits.domain.planning.reasons.plan_mark import plan_mark
from visits.models import WeekPlan
from visits.services.give_reasons import give_reasons
from visits.services.move_stop import StopMove, move_stop

EVENING = datetime(2026, 3, 1, 19, tzinfo=UTC)


def stored(house, plan):
    return WeekPlan.objects.within(house.scope).get(pk=plan.pk)


def test_a_proposed_plan_has_the_reasons_of_just_that_plan(house, proposed):
    visits = [wanted(house.farm), wanted(make_farm(house.business, "High Croft", by=house.owner))]
    plan = stored(house, proposed())
    assert plan.reasons["of"] == plan_mark(plan.plan)
    assert plan.reasons["complete"]
    assert plan.reasons["stops"].keys() == {f"visit-{visit.pk}" for visit in visits}
    assert plan.reasons["rules"][0]["code"] == "this-plan"


def test_nothing_but_the_reasons_is_written(house, proposed):
    wanted(house.farm)
    plan = proposed()
    WeekPlan.objects.within(house.scope).filter(pk=plan.pk).update(state="accepted", reasons=None)
    give_reasons(week_plan=plan)
    assert (stored(house, plan).state, stored(house, plan).reasons) == ("accepted", plan.reasons)


def test_a_plan_that_is_not_found_yet_has_none(house, proposed):
    wanted(house.farm)
    plan = proposed()
    plan.plan = plan.reasons = None
    assert give_reasons(week_plan=plan).reasons is None


def test_what_was_taken_out_by_hand_is_not_called_too_dear(house, proposed):
    visit = wanted(house.farm)
    plan = proposed()
    job = f"visit-{visit.pk}"
    plan.plan = json.loads(json.dumps(plan.plan)) | {"shifts": [], "left_out": [{"job": job}]}
    plan.problem["jobs"][0]["leave_out_cost"] = 0
    plan.left_by_hand = {job: 12000}
    give_reasons(week_plan=plan)
    assert [way["code"] for way in plan.reasons["left_out"][job]] == ["by-hand"]


def test_a_confirmed_hour_is_priced_against_the_farm_s_other_hours(house, proposed):
    visit = wanted(house.farm)
    proposed_first = proposed()
    (stop,) = [stop for shift in proposed_first.plan["shifts"] for stop in shift["stops"]]
    visit.refresh_from_db()
    visit.van, visit.state = house.van, "confirmed"
    visit.planned_start = datetime.fromisoformat(stop["start"]) + timedelta(hours=1)
    visit.planned_finish = datetime.fromisoformat(stop["finish"]) + timedelta(hours=1)
    visit.save()
    plan = proposed(EVENING)
    (promise,) = plan.reasons["promises"][f"visit-{visit.pk}"]
    assert datetime.fromisoformat(promise["promised"]) == visit.planned_start
    assert promise["money"] >= 0


def test_a_plan_changed_by_hand_gets_reasons_of_its_own(house, proposed, django_capture_on_commit_callbacks):
    visit = wanted(house.farm)
    wanted(make_farm(house.business, "High Croft", by=house.owner))
    plan = proposed()
    with django_capture_on_commit_callbacks(execute=True):
        version = move_stop(week_plan=plan, move=StopMove(visit), at=EVENING, by=house.owner)
    kept = stored(house, version)
    assert kept.pk != plan.pk
    assert kept.reasons["of"] == plan_mark(kept.plan) != plan.reasons["of"]
    assert [way["code"] for way in kept.reasons["left_out"][f"visit-{visit.pk}"]] == ["by-hand"]
