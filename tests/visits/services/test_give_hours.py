from datetime import timedelta

import pytest
from django.db import transaction

from tests.factories import NOON, TUESDAY_TEN, confirmed, make_farm, planned
from visits.models import Visit
from visits.selectors.offer_again import NewHour
from visits.services.give_hours import give_hours
from visits.services.visit_change import VisitCannotMove


def give(house, *hours):
    vans = {house.van.pk: house.van}
    with transaction.atomic():
        give_hours(hours=hours, vans=vans, note="makes room", at=NOON, by=house.office)


def test_two_visits_may_change_places_at_once(house):
    first = planned(house.farm, house.van, TUESDAY_TEN)
    second = planned(
        make_farm(house.business, "High Croft", by=house.owner), house.van, TUESDAY_TEN + timedelta(hours=4)
    )
    at = first.planned_start, second.planned_start
    give(house, NewHour(first, house.van.pk, at[1]), NewHour(second, house.van.pk, at[0]))
    rows = Visit.objects.within(house.scope).in_bulk()
    assert (rows[first.pk].planned_start, rows[second.pk].planned_start) == (at[1], at[0])
    assert rows[first.pk].planned_finish - at[1] == timedelta(minutes=first.expected_minutes)
    assert rows[first.pk].events.within(house.scope).last().note == "makes room"


def test_a_confirmed_visit_is_not_moved_and_then_none_is(house):
    first = planned(house.farm, house.van, TUESDAY_TEN)
    promised = confirmed(
        make_farm(house.business, "High Croft", by=house.owner), house.van, TUESDAY_TEN + timedelta(hours=4)
    )
    later = TUESDAY_TEN + timedelta(days=1)
    with pytest.raises(VisitCannotMove):
        give(house, NewHour(first, house.van.pk, later), NewHour(promised, house.van.pk, later))
    assert Visit.objects.within(house.scope).get(pk=first.pk).planned_start == TUESDAY_TEN
