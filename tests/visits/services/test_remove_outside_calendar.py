import pytest

from tests.factories import make_house
from tests.visits.documents.own_calendar import DENTIST, calendar
from tests.visits.own_calendars import own_calendar
from visits.models import OutsideBusy, OutsideCalendar
from visits.services.remove_outside_calendar import remove_outside_calendar

pytestmark = pytest.mark.django_db


def test_with_a_calendar_goes_all_that_it_kept_the_van_in_for():
    house, other = make_house(), make_house("another")
    own_calendar(other, calendar(DENTIST))
    remove_outside_calendar(calendar=own_calendar(house, calendar(DENTIST)))
    assert not OutsideCalendar.objects.within(house.scope).exists()
    assert not OutsideBusy.objects.within(house.scope).exists()
    assert OutsideBusy.objects.within(other.scope).count() == 1
