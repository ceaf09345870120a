"""The visit will not be."""

from datetime import timedelta

import pytest

from tests.factories import NOON, blocked_foot, finish, finished, planned, put_down
from visits.models import Recheck, Visit, VisitEvent
from visits.services.call_off_visit import ReasonMissing, call_off_visit
from visits.services.gather_farm_rechecks import gather_farm_rechecks
from visits.services.visit_change import VisitCannotMove


def test_a_visit_is_called_off_with_its_reason(house):
    visit = planned(house.farm, house.van)
    call_off_visit(visit=visit, because=" Farm sold. ", at=NOON, by=house.owner)
    stored = Visit.objects.within(house.scope).get(pk=visit.pk)
    assert (stored.state, stored.called_off_because, stored.called_off_at) == (
        "called_off",
        "Farm sold.",
        NOON,
    )
    assert "Farm sold." in VisitEvent.objects.within(house.scope).filter(visit=visit).last().note


@pytest.mark.parametrize("because", ["", "   "])
def test_a_visit_is_not_called_off_without_a_word(house, because):
    visit = planned(house.farm, house.van)
    with pytest.raises(ReasonMissing):
        call_off_visit(visit=visit, because=because, at=NOON, by=house.owner)
    assert Visit.objects.within(house.scope).get(pk=visit.pk).state == "planned"


def test_a_finished_visit_stays_finished(house):
    with pytest.raises(VisitCannotMove):
        call_off_visit(visit=finished(house.farm, house.van), because="Oops", at=NOON, by=house.owner)


def test_the_feet_it_was_to_see_are_free_to_be_gathered_again(house, visit):
    put_down(visit, house.cow, blocked_foot())
    finish(visit, house.trimmer)
    today = visit.started_at.date() + timedelta(days=14)
    (first,) = gather_farm_rechecks(farm=house.farm, today=today, at=NOON)
    call_off_visit(visit=first, because="Snow", at=NOON, by=house.owner)
    assert Recheck.objects.within(house.scope).open().get().visit is None
    (again,) = gather_farm_rechecks(farm=house.farm, today=today, at=NOON)
    assert again.pk != first.pk
    assert Recheck.objects.within(house.scope).open().get().visit == again
