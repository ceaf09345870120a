import pytest
from django.core.exceptions import ValidationError

from tests.factories import NOON, make_house, make_van
from tests.visits.documents.own_calendar import DENTIST, calendar
from trimops.errands.models import Errand
from visits.models import OutsideBusy, OutsideCalendar
from visits.services.add_outside_calendar import (
    MOST_CALENDARS,
    CalendarRefused,
    CalendarWish,
    add_outside_calendar,
)

pytestmark = pytest.mark.django_db
URL = "https://calendar.example/secret/me.ics"


@pytest.fixture
def house():
    return make_house()


def add(house, van=None, **wish):
    wished = CalendarWish(**{"name": "Mine", **wish})
    return add_outside_calendar(van=van or house.van, wish=wished, at=NOON, by=house.trimmer)


def test_of_a_file_it_is_read_at_once(house):
    row = add(house, file=calendar(DENTIST), keeps_titles=True)
    assert (row.url, row.fetched_at) == ("", NOON)
    assert (row.read_until - NOON.date()).days == 400, "nobody reads a file again"
    assert OutsideBusy.objects.within(house.scope).get().summary == "Dentist"


@pytest.mark.parametrize(
    "written", [URL, " " + URL + " ", URL.replace("https", "webcal"), URL.replace("https", "WEBCALS")]
)
def test_of_an_address_it_is_read_after_the_commit(house, written):
    row = add(house, url=written)
    assert (row.url, row.fetched_at) == (URL, None)
    errand = Errand.objects.within(house.scope).get(job="visits.fetch_days_off")
    assert errand.ids == {"calendar_id": row.pk}


@pytest.mark.parametrize(
    ("wish", "field"),
    [
        ({}, "url"),
        ({"url": URL, "file": b"x"}, "url"),
        ({"url": "http://calendar.example/"}, "url"),
        ({"url": "https://127.0.0.1/me.ics"}, "url"),
        ({"url": "file:///etc/passwd"}, "url"),
        ({"url": "webcal://me:pw@calendar.example/"}, "url"),
        ({"file": b"<html>"}, "file"),
        ({"file": b""}, "file"),
    ],
)
def test_what_cannot_be_read_is_refused_on_its_field(house, wish, field):
    with pytest.raises(CalendarRefused) as no:
        add(house, **wish)
    assert no.value.field == field
    assert not OutsideCalendar.objects.within(house.scope).exists()


def test_a_van_has_the_same_calendar_once_and_not_too_many(house):
    add(house, url=URL)
    with pytest.raises(CalendarRefused, match="already"):
        add(house, url=URL)
    add(house, make_van(house.business, house.trimmer, "Second van"), url=URL)
    for number in range(MOST_CALENDARS - 1):
        add(house, url=f"{URL}?{number}")
    with pytest.raises(CalendarRefused, match="at most"):
        add(house, url=URL + "?more")


def test_without_a_name_it_is_not_kept(house):
    with pytest.raises(ValidationError):
        add(house, name="", url=URL)
