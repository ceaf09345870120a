"""A proposed week becomes the diary, or is found stale."""

from datetime import datetime, timedelta

import pytest

from tests.factories import NOON, TUESDAY_TEN, confirmed, make_farm, planned, wanted
from tests.visits.services.changed_week import at
from visits.models import Visit, VisitEvent, WeekPlan
from visits.selectors.week_under_way import LateWord
from visits.services.accept_week_plan import PlanIsStale, PromiseNeedsYes, accept_week_plan
from visits.services.call_off_visit import call_off_visit
from visits.services.confirm_visit import confirm_visit
from visits.services.plan_visit import plan_visit
from visits.services.put_off_visit import put_off_visit
from visits.services.start_visit import start_visit


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


def test_a_promise_that_cannot_be_kept_moves_only_with_a_yes(changed):
    plan, firm = changed.planned_again(changed.out()), changed.visits["firm"]
    with pytest.raises(PromiseNeedsYes, match="Tick"):
        accept(changed.house, plan)
    assert changed.stored("told").van == changed.house.van
    accept_week_plan(week_plan=plan, at=NOON, by=changed.house.owner, agreed=[firm.pk])
    row = changed.stored("firm")
    assert (row.state, row.van) == ("planned", changed.second)
    assert row.planned_start == changed.stop(plan, "firm")[1]
    assert row.hour_told == at(3, 13), "the farm counts on its old hour until it is told"


def test_a_yes_moves_no_other_confirmed_visit(changed):
    plan, firm = changed.planned_again(changed.lame()), changed.visits["firm"]
    for shift in plan.plan["shifts"]:
        for stop in shift["stops"]:
            if stop["job"] == f"visit-{firm.pk}":
                stop["start"] = (datetime.fromisoformat(stop["start"]) + timedelta(hours=1)).isoformat()
    plan.save()
    with pytest.raises(PlanIsStale, match="confirmed"):
        accept_week_plan(week_plan=plan, at=NOON, by=changed.house.owner, agreed=[firm.pk])


def test_a_promise_that_finds_no_place_goes_back_to_wanted_with_a_yes(changed):
    plan, firm = changed.planned_again(changed.out()), changed.visits["firm"]
    for shift in plan.plan["shifts"]:
        shift["stops"] = [stop for stop in shift["stops"] if stop["job"] != f"visit-{firm.pk}"]
    plan.save()
    with pytest.raises(PromiseNeedsYes):
        accept(changed.house, plan)
    accept_week_plan(week_plan=plan, at=NOON, by=changed.house.owner, agreed=[firm.pk])
    assert changed.stored("firm").state == "wanted"


def test_a_visit_under_way_stays_as_it_is_and_the_day_goes_on_from_it(changed):
    first = start_visit(visit=changed.visits["first"], checked=True, at=at(3, 9, 5), by=changed.house.trimmer)
    plan = changed.planned_again(LateWord(first, at(3, 11, 30)), now=at(3, 10))
    accept(changed.house, plan)
    row = changed.stored("first")
    assert (row.state, row.planned_start) == ("under_way", first.planned_start)
    assert changed.stored("told").planned_start >= at(3, 11, 30)


def test_a_confirmed_visit_that_is_late_itself_keeps_its_promise_at_the_later_hour(changed):
    firm = changed.visits["firm"]
    plan = changed.planned_again(LateWord(firm, at(3, 16)), now=at(3, 12, 50))
    accept(changed.house, plan)
    row = changed.stored("firm")
    assert (row.state, row.planned_finish) == ("confirmed", at(3, 16))
