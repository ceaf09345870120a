"""The farm has been told."""

import pytest

from tests.factories import NOON, confirmed, planned, wanted
from visits.models import VisitEvent
from visits.services.plan_visit import plan_visit
from visits.services.tell_hour import NoHourToTell, tell_hour


def tell(house, visit):
    return tell_hour(visit=visit, at=NOON, by=house.office)


def test_the_hour_told_is_the_one_in_the_diary(house):
    visit = planned(house.farm, house.van)
    row = tell(house, visit)
    assert (row.hour_told, row.state) == (visit.planned_start, "planned")
    assert VisitEvent.objects.within(house.scope).filter(visit=visit).last().note == "told its hour"


def test_telling_twice_is_telling_once(house):
    visit = planned(house.farm, house.van)
    tell(house, visit)
    events = VisitEvent.objects.within(house.scope).count()
    tell(house, visit)
    assert VisitEvent.objects.within(house.scope).count() == events


def test_the_farm_still_counts_on_the_old_hour_when_the_diary_moves(house):
    visit = tell(house, planned(house.farm, house.van))
    old = visit.planned_start
    moved = plan_visit(visit=visit, van=house.van, start=NOON, at=NOON, by=house.office)
    assert moved.hour_told == old
    assert tell(house, moved).hour_told == NOON


def test_a_confirmed_farm_may_be_told_too_and_one_without_an_hour_not(house):
    assert tell(house, confirmed(house.farm, house.van)).state == "confirmed"
    with pytest.raises(NoHourToTell):
        tell(house, wanted(house.farm))
