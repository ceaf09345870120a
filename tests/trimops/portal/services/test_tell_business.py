"""The business hears of what a farm did by itself."""

from django.core import mail

from tests.factories import NOON, TUESDAY_TEN, confirmed, wanted
from trimops.outbox.models import Outgoing
from trimops.portal.services.tell_business import tell_business


def test_an_hour_that_was_taken_is_told_with_day_and_hour_in_the_zone_of_the_business(
    house, django_capture_on_commit_callbacks
):
    house.business.email = "office@trimmers.example"
    house.business.save()
    visit = confirmed(house.farm, house.van)
    with django_capture_on_commit_callbacks(execute=True):
        tell_business(visit=visit, at=NOON)
    assert mail.outbox[0].subject == "Low Croft has taken an hour"
    assert "Low Croft has taken Tuesday 3 March, 10:00" in mail.outbox[0].body


def test_each_is_told_once_and_an_hour_after_a_wish_is_told_too(house, django_capture_on_commit_callbacks):
    house.business.email = "office@trimmers.example"
    house.business.save()
    visit = wanted(house.farm)
    with django_capture_on_commit_callbacks(execute=True):
        tell_business(visit=visit, at=NOON)
        tell_business(visit=visit, at=NOON)
        visit.planned_start = TUESDAY_TEN
        tell_business(visit=visit, at=NOON)
    assert [m.subject for m in mail.outbox] == ["Low Croft asks for a visit", "Low Croft has taken an hour"]
    assert {row.farm_id for row in Outgoing.objects.within(house.scope)} == {house.farm.pk}


def test_without_an_address_nobody_is_told(house):
    tell_business(visit=wanted(house.farm), at=NOON)
    assert not Outgoing.objects.within(house.scope).exists()
