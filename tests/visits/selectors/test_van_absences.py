from datetime import UTC, date, datetime, timedelta

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from tests.factories import MONDAY, NOON, make_house
from tests.visits.documents.own_calendar import DENTIST, HOLIDAY, calendar
from tests.visits.own_calendars import own_calendar
from visits.models import OutBecause, VanOut
from visits.selectors.van_absences import AwayBy, absences_between, own_appointments
from visits.services.save_van import set_day_off

pytestmark = pytest.mark.django_db


def test_all_that_keeps_a_van_in_is_told_in_its_order_in_three_queries():
    house = make_house()
    own_calendar(house, calendar(DENTIST, HOLIDAY), keeps_titles=True)
    set_day_off(van=house.van, day=date(2026, 3, 4), reason="Show day", is_off=True, at=NOON)
    VanOut.objects.create(
        business=house.business,
        van=house.van,
        since=NOON + timedelta(days=3),
        until=NOON + timedelta(days=3, hours=4),
        because=OutBecause.CRUSH,
        noted_at=NOON,
        noted_by=house.owner,
    )
    with CaptureQueriesContext(connection) as asked:
        found = absences_between(house.business, MONDAY, MONDAY + timedelta(days=9))
    assert len(asked) == 3
    assert [(each.by, each.why, each.is_whole_days) for each in found] == [
        (AwayBy.OWN_CALENDAR, "Dentist", False),
        (AwayBy.DAY_OFF, "Show day", True),
        (AwayBy.OUT, "Crush broken", False),
        (AwayBy.OWN_CALENDAR, "Away with the family", True),
    ]
    assert {each.van_name for each in found} == {house.van.name}
    assert found[-1].last.date() == date(2026, 3, 12)


def test_only_what_touches_the_days_asked_for_and_only_of_ones_own_business():
    house = make_house()
    own_calendar(house, calendar(DENTIST, HOLIDAY))
    own_calendar(make_house("another"), calendar(DENTIST))
    assert own_appointments(house.business, date(2026, 3, 4), date(2026, 3, 9)) == {}
    found = own_appointments(house.business, date(2026, 3, 12), date(2026, 3, 20))
    assert [each.since for each in found[house.van.pk]] == [datetime(2026, 3, 10, tzinfo=UTC)]


def test_without_a_title_the_calendars_own_name_is_told():
    house = make_house()
    own_calendar(house, calendar(DENTIST), name="Ann's phone")
    (found,) = own_appointments(house.business, MONDAY, MONDAY + timedelta(days=6))[house.van.pk]
    assert found.why == "Ann's phone"
