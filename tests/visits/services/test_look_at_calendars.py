from datetime import timedelta

import pytest

from tests.factories import NOON, make_house
from tests.visits.own_calendars import own_calendar
from trimops.errands.models import Errand
from visits.services.look_at_calendars import EVERY, look_at_calendars

pytestmark = pytest.mark.django_db
URL = "https://calendar.example/me.ics"


def test_whatever_was_not_asked_for_an_hour_is_asked_again_in_every_business():
    house, other = make_house(), make_house("another")
    old = own_calendar(house, url=URL, asked_at=NOON - EVERY)
    new = own_calendar(other, url=URL)
    own_calendar(house, url=URL + "?2", asked_at=NOON - EVERY + timedelta(minutes=1))
    own_calendar(house, name="From a file")
    assert look_at_calendars(at=NOON) == 2
    asked = {
        (business.pk, errand.ids["calendar_id"])
        for business in (house.business, other.business)
        for errand in Errand.objects.within(
            house.scope if business == house.business else other.scope
        ).filter(job="visits.fetch_days_off")
    }
    assert asked == {(house.business.pk, old.pk), (other.business.pk, new.pk)}
