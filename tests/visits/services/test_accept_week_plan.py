"""A proposed week becomes the diary, or is found stale."""

from datetime import datetime, timedelta

import pytest

from tests.factories import NOON, TUESDAY_TEN, confirmed, make_farm, planned, wanted
from visits.models import Visit, VisitEvent, WeekPlan
from visits.services.accept_week_plan import PlanIsStale, accept_week_plan
from visits.services.call_off_visit import call_off_visit
from visits.services.confirm_visit import confirm_visit
from visits.services.plan_visit import plan_visit
from visits.services.put_off_visit import put_off_visit


def accept(house, plan):
    return accept_week_plan(week_plan=plan, at=NOON, by=house.owner)


def stored(house, visit):
    return Visit.objects.within(house.scope).get(pk=visit.pk)


def stop_of(plan, visit):
    stops = [stop for shift in plan.plan["shifts"] for stop in shift["stops"]]
    return next(stop for stop in stops if stop["job"] == f"visit-{visit.pk}")


def test_each_visit_gets_the_van_and_hour_of_the_plan(house, proposed):
    visit = wanted(house.farm)
    plan = accept(house, proposed())
    row, stop = stored(house, visit), stop_of(plan, visit)
    assert (row.state, row.van) == ("planned", house.van)
    assert row.planned_start == datetime.fromisoformat(stop["start"])
    assert row.planned_finish == datetime.fromisoformat(stop["finish"])
    assert VisitEvent.objects.within(house.scope).filter(visit=visit).last().note == "by the week's plan"
    assert (plan.state, plan.accepted_at) == ("accepted", NOON)


def test_a_confirmed_visit_is_not_touched(house, proposed):
    visit = confirmed(house.farm, house.van)
    wanted(make_farm(house.business, "High Croft", by=house.owner))
    before = Visit.objects.within(house.scope).values().get(pk=visit.pk)
    accept(house, proposed())
    assert Visit.objects.within(house.scope).values().get(pk=visit.pk) == before


def test_a_planned_visit_that_is_left_out_goes_back_to_wanted(house, proposed):
    kept = wanted(house.farm)
    left_out = planned(make_farm(house.business, "High Croft", by=house.owner), house.van)
    plan = proposed()
    for shift in plan.plan["shifts"]:
        shift["stops"] = [stop for stop in shift["stops"] if stop["job"] != f"visit-{left_out.pk}"]
    plan.save()
    accept(house, plan)
    row = stored(house, left_out)
    assert (row.state, row.van, row.planned_start) == ("wanted", None, None)
    assert stored(house, kept).state == "planned"


def test_a_visit_called_off_since_makes_the_plan_stale(house, proposed):
    visit = wanted(house.farm)
    plan = proposed()
    call_off_visit(visit=visit, because="Snow", at=NOON, by=house.owner)
    with pytest.raises(PlanIsStale, match="called off or begun"):
        accept(house, plan)
    assert WeekPlan.objects.within(house.scope).get(pk=plan.pk).state == "proposed"


def test_a_visit_confirmed_for_another_hour_since_makes_the_plan_stale(house, proposed):
    visit = wanted(house.farm)
    plan = proposed()
    elsewhen = datetime.fromisoformat(stop_of(plan, visit)["start"]) + timedelta(days=1, minutes=5)
    confirm_visit(
        visit=plan_visit(visit=visit, van=house.van, start=elsewhen, at=NOON, by=house.owner),
        at=NOON,
        by=house.owner,
    )
    with pytest.raises(PlanIsStale, match="another hour"):
        accept(house, plan)
    assert stored(house, visit).planned_start == elsewhen


def test_a_visit_planned_by_hand_in_the_same_hours_since_makes_the_plan_stale(house, proposed):
    visit = wanted(house.farm)
    plan = proposed()
    start = datetime.fromisoformat(stop_of(plan, visit)["start"]) + timedelta(minutes=10)
    by_hand = planned(make_farm(house.business, "High Croft", by=house.owner), house.van, start)
    with pytest.raises(PlanIsStale, match="planned by hand"):
        accept(house, plan)
    assert (stored(house, visit).state, stored(house, by_hand).planned_start) == ("wanted", start)


def test_a_refusal_halfway_leaves_no_visit_moved(house, proposed):
    first, second = wanted(house.farm), wanted(make_farm(house.business, "High Croft", by=house.owner))
    plan = proposed()
    call_off_visit(visit=second, because="Snow", at=NOON, by=house.owner)
    with pytest.raises(PlanIsStale):
        accept(house, plan)
    assert stored(house, first).state == "wanted"


def test_a_plan_is_accepted_once(house, proposed):
    wanted(house.farm)
    plan = accept(house, proposed())
    with pytest.raises(PlanIsStale, match="not open for acceptance"):
        accept(house, plan)


def test_a_later_accepted_plan_sets_the_earlier_aside(house, proposed):
    visit = wanted(house.farm)
    first = accept(house, proposed())
    put_off_visit(visit=stored(house, visit), because="Rain", at=TUESDAY_TEN, by=house.owner)
    second = accept(house, proposed())
    states = dict(WeekPlan.objects.within(house.scope).values_list("pk", "state"))
    assert (states[first.pk], states[second.pk]) == ("set_aside", "accepted")
