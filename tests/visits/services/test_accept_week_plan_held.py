"""A week's plan and the hours that are held for farms."""

import pytest

from tests.factories import MONDAY, make_farm, wanted
from tests.visits.services.offers import SUNDAY_EVENING, TUESDAY, hold, offers, urgent
from visits.domain.planning.solve_limits import SolveLimits
from visits.models import Visit
from visits.services.accept_week_plan import PlanIsStale, accept_week_plan
from visits.services.ask_week_plan import ask_week_plan
from visits.services.think_week_plan import think_week_plan


def planned_week(house):
    plan = ask_week_plan(business=house.business, monday=MONDAY, at=SUNDAY_EVENING, by=house.owner)
    return think_week_plan(week_plan=plan, limits=SolveLimits(iterations=20), at=SUNDAY_EVENING)


def accept(house, plan):
    return accept_week_plan(week_plan=plan, at=SUNDAY_EVENING, by=house.owner)


def test_a_plan_that_knows_of_the_hour_keeps_it_free_and_is_accepted(house):
    held = hold(house, next(line for line in offers(house.farm).fits if line.day == TUESDAY))
    other = wanted(make_farm(house.business, "High Croft", by=house.owner), head_count=20)
    plan = planned_week(house)
    stops = {stop["job"]: stop["start"] for shift in plan.plan["shifts"] for stop in shift["stops"]}
    assert set(stops) == {held.job, f"visit-{other.pk}"}
    accept(house, plan)
    row = Visit.objects.within(house.scope).get()
    assert (row.pk, row.state) == (other.pk, "planned")
    assert row.planned_start >= held.finish or row.planned_finish <= held.start


def test_an_hour_held_since_makes_the_plan_stale(house):
    visit = wanted(make_farm(house.business, "High Croft", by=house.owner), head_count=20)
    plan = planned_week(house)
    wish = urgent(head_count=30)
    for line in offers(house.farm, wish).fits:
        hold(house, line, wish=wish)
    with pytest.raises(PlanIsStale, match="An hour is held for Low Croft"):
        accept(house, plan)
    assert Visit.objects.within(house.scope).get(pk=visit.pk).state == "wanted"
