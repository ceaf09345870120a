"""The farm says yes to the hour."""

import pytest

from tests.factories import NOON, planned, wanted
from visits.models import Visit, VisitEvent
from visits.services.confirm_visit import confirm_visit
from visits.services.visit_change import VisitCannotMove


def test_a_confirmed_visit_keeps_its_van_and_hour_and_who_said_so(house):
    visit = planned(house.farm, house.van)
    confirm_visit(visit=visit, at=NOON, by=house.office, note="by phone")
    stored = Visit.objects.within(house.scope).get(pk=visit.pk)
    assert stored.state == "confirmed"
    assert (stored.van_id, stored.planned_start) == (visit.van_id, visit.planned_start)
    event = VisitEvent.objects.within(house.scope).filter(visit=visit).last()
    assert (event.by, event.note) == (house.office, "by phone")


def test_a_visit_without_an_hour_cannot_be_confirmed(house):
    with pytest.raises(VisitCannotMove, match="wanted and cannot become confirmed"):
        confirm_visit(visit=wanted(house.farm), at=NOON, by=house.office)


def test_a_second_yes_is_refused(house):
    visit = confirm_visit(visit=planned(house.farm, house.van), at=NOON, by=house.office)
    with pytest.raises(VisitCannotMove):
        confirm_visit(visit=visit, at=NOON, by=house.office)
