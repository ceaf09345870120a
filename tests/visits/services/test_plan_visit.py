"""A visit gets its van and its hour."""

from datetime import timedelta

import pytest

from tests.factories import (
    NOON,
    TUESDAY_TEN,
    confirmed,
    finished,
    make_farm,
    make_house,
    make_van,
    planned,
    wanted,
)
from trimops.tenancy.errors import MixedBusinesses
from visits.models import Visit, VisitEvent
from visits.services.call_off_visit import call_off_visit
from visits.services.plan_visit import VanIsBusy, plan_visit
from visits.services.visit_change import VisitCannotMove


def plan(visit, van, start=TUESDAY_TEN):
    return plan_visit(visit=visit, van=van, start=start, at=NOON, by=van.trimmer)


def test_a_planned_visit_ends_after_the_minutes_it_is_expected_to_take(house):
    visit = planned(house.farm, house.van)
    stored = Visit.objects.within(house.scope).get(pk=visit.pk)
    assert (stored.state, stored.van, stored.planned_start) == ("planned", house.van, TUESDAY_TEN)
    assert stored.planned_finish == TUESDAY_TEN + timedelta(minutes=stored.expected_minutes)
    assert "Van 1" in VisitEvent.objects.within(house.scope).filter(visit=visit).last().note


def test_a_van_cannot_be_at_two_farms_at_once(house):
    first = planned(house.farm, house.van)
    other = wanted(make_farm(house.business, "High Croft", by=house.owner))
    with pytest.raises(VanIsBusy, match="Low Croft"):
        plan(other, house.van, first.planned_finish - timedelta(minutes=1))
    assert Visit.objects.within(house.scope).get(pk=other.pk).state == "wanted"


def test_one_visit_may_begin_the_minute_another_ends(house):
    first = planned(house.farm, house.van)
    assert plan(wanted(house.farm), house.van, first.planned_finish).state == "planned"


def test_another_van_may_go_at_the_same_hour(house):
    planned(house.farm, house.van)
    second = make_van(house.business, house.owner, "Van 2")
    assert plan(wanted(house.farm), second).van == second


def test_a_visit_called_off_frees_its_van(house):
    call_off_visit(visit=planned(house.farm, house.van), because="Snow", at=NOON, by=house.owner)
    assert plan(wanted(house.farm), house.van).state == "planned"


def test_a_planned_visit_may_be_moved_into_its_own_old_hours(house):
    moved = plan(planned(house.farm, house.van), house.van, TUESDAY_TEN + timedelta(minutes=15))
    assert moved.planned_start == TUESDAY_TEN + timedelta(minutes=15)


def test_moving_a_confirmed_visit_takes_its_yes_away(house):
    moved = plan(confirmed(house.farm, house.van), house.van, TUESDAY_TEN + timedelta(days=1))
    assert moved.state == "planned"


def test_a_finished_visit_cannot_be_planned_again(house):
    with pytest.raises(VisitCannotMove, match="finished"):
        plan(finished(house.farm, house.van), house.van, TUESDAY_TEN + timedelta(days=2))


def test_a_van_of_another_business_is_out_of_reach(house):
    theirs = make_house("Fell & Beck")
    with pytest.raises(MixedBusinesses):
        plan(wanted(house.farm), theirs.van)
