"""The work begins, once the check is done."""

import pytest

from tests.factories import NOON, confirmed, planned, wanted
from visits.models import Visit, VisitEvent
from visits.services.start_visit import StartNotChecked, start_visit
from visits.services.visit_change import VisitCannotMove


@pytest.mark.parametrize("made", [planned, confirmed])
def test_the_work_begins_when_the_check_is_ticked(house, made):
    visit = made(house.farm, house.van)
    start_visit(visit=visit, checked=True, at=NOON, by=house.trimmer)
    stored = Visit.objects.within(house.scope).get(pk=visit.pk)
    assert (stored.state, stored.started_at, stored.start_checked) == ("under_way", NOON, True)
    assert VisitEvent.objects.within(house.scope).filter(visit=visit).last().by == house.trimmer


def test_without_the_check_no_cow_comes_in(house):
    visit = planned(house.farm, house.van)
    with pytest.raises(StartNotChecked, match="check"):
        start_visit(visit=visit, checked=False, at=NOON, by=house.trimmer)
    stored = Visit.objects.within(house.scope).get(pk=visit.pk)
    assert (stored.state, stored.started_at, stored.start_checked) == ("planned", None, False)


def test_a_visit_that_nobody_planned_cannot_be_started(house):
    with pytest.raises(VisitCannotMove):
        start_visit(visit=wanted(house.farm), checked=True, at=NOON, by=house.trimmer)


def test_a_visit_is_started_once(house, visit):
    with pytest.raises(VisitCannotMove):
        start_visit(visit=visit, checked=True, at=NOON, by=house.trimmer)
