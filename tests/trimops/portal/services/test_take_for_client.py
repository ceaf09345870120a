"""A farm client takes the hour that is held for them."""

from datetime import timedelta
from uuid import uuid4

import pytest

from tests.factories import MONDAY, make_farm, make_wish, planned, wanted
from tests.trimops.portal.services.test_hold_for_client import hold, offered
from tests.visits.services.offers import SUNDAY_EVENING, TUESDAY, at, offers, urgent
from tests.visits.services.offers import hold as hold_by_office
from trimops.portal.services.take_for_client import take_for_client
from visits.domain.routine_due import ASKED_BY_RULE
from visits.models import Visit
from visits.services.hold_offer import OfferIsGone
from visits.services.sweep_rechecks import sweep_routine
from visits.services.tell_hour import tell_hour

ROUTINE = make_wish(due_until=MONDAY + timedelta(days=14))


def take(house, wish):
    held = hold(house, offered(house, wish), wish)
    return take_for_client(held=held, start=held.start, at=SUNDAY_EVENING, by=house.client)


def states(house, visit):
    rows = Visit.objects.within(house.scope).exclude(pk=visit.pk)
    return list(rows.order_by("pk").values_list("state", flat=True))


def test_a_routine_visit_that_the_rule_wanted_makes_place_for_the_one_the_farm_took(house):
    sweep_routine(scope=house.scope, today=MONDAY, at=SUNDAY_EVENING)
    assert Visit.objects.within(house.scope).get().asked_by == ASKED_BY_RULE
    visit = take(house, ROUTINE)
    assert states(house, visit) == ["called_off"]


def test_what_somebody_asked_for_stays_wanted(house):
    wanted(house.farm)
    assert states(house, take(house, ROUTINE)) == ["wanted"]


def test_an_urgent_hour_takes_no_routine_visits_place(house):
    sweep_routine(scope=house.scope, today=MONDAY, at=SUNDAY_EVENING)
    visit = take(house, urgent())
    assert (visit.state, visit.farm, visit.reason) == ("confirmed", house.farm, "urgent")
    assert states(house, visit) == ["wanted"]


def test_where_the_van_is_then_is_not_told(house):
    """Should an hour overlap after all, the refusal that names another farm goes no further."""
    held = hold(house, offered(house, urgent()))
    other = make_farm(house.business, "High Croft", by=house.owner)
    Visit.objects.bulk_create([_in_the_way(other, held)])
    with pytest.raises(OfferIsGone) as refused:
        take_for_client(held=held, start=held.start, at=SUNDAY_EVENING, by=house.client)
    assert "High Croft" not in refused.value.message


def _in_the_way(farm, held):
    """A visit that began early and is still going on when the held hour begins."""
    visit = wanted(farm)
    visit.pk, visit.uid, visit.state, visit.van = None, uuid4(), "under_way", held.van
    visit.planned_start, visit.planned_finish = held.start, held.finish
    return visit


def test_an_hour_that_the_office_held_is_taken_as_the_office_settled_it(house):
    """The office moved a visit that knew its hour; the farm's yes does not undo that."""
    other = planned(
        make_farm(house.business, "High Croft", by=house.owner), house.van, at("09:30"), head_count=28
    )
    tell_hour(visit=other, at=SUNDAY_EVENING, by=house.owner)
    wish = urgent(head_count=30)
    line = next(line for line in offers(house.farm, wish).moves if line.day == TUESDAY)
    held = hold_by_office(house, line, wish=wish)
    visit = take_for_client(held=held, start=held.start, at=SUNDAY_EVENING, by=house.client)
    assert visit.state == "confirmed"
