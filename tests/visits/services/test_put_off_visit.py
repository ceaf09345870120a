"""A visit goes back on the list of what is wanted."""

import pytest

from tests.factories import NOON, confirmed, planned, wanted
from visits.models import Visit, VisitEvent
from visits.services.put_off_visit import put_off_visit
from visits.services.visit_change import VisitCannotMove


@pytest.mark.parametrize("made", [planned, confirmed])
def test_a_visit_put_off_loses_van_and_hour_but_keeps_its_due_days(house, made):
    visit = made(house.farm, house.van)
    put_off_visit(visit=visit, because="Silage first", at=NOON, by=house.office)
    stored = Visit.objects.within(house.scope).get(pk=visit.pk)
    assert (stored.state, stored.van, stored.planned_start, stored.planned_finish) == (
        "wanted",
        None,
        None,
        None,
    )
    assert (stored.due_from, stored.due_until) == (visit.due_from, visit.due_until)
    assert VisitEvent.objects.within(house.scope).filter(visit=visit).last().note == "Silage first"


def test_a_visit_that_has_no_hour_cannot_be_put_off(house):
    with pytest.raises(VisitCannotMove):
        put_off_visit(visit=wanted(house.farm), because="Rain", at=NOON, by=house.office)


def test_a_visit_under_way_cannot_be_put_off(house, visit):
    with pytest.raises(VisitCannotMove, match="under way"):
        put_off_visit(visit=visit, because="Rain", at=NOON, by=house.office)
