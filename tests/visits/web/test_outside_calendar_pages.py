from datetime import timedelta

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.urls import reverse
from django.utils import timezone

from tests.factories import make_house
from tests.visits.documents.own_calendar import calendar
from tests.visits.own_calendars import own_calendar
from trimops.errands.models import Errand
from visits.models import OutsideBusy, OutsideCalendar

pytestmark = pytest.mark.django_db
URL = "https://calendar.example/private-3f9a/me.ics"


@pytest.fixture
def house():
    return make_house()


@pytest.fixture
def cab(house, client):
    client.force_login(house.trimmer)
    return client


def page_of(house):
    return reverse("van_calendars", args=[house.van.pk])


def tomorrow():
    day = (timezone.now() + timedelta(days=1)).strftime("%Y%m%d")
    return calendar(f"DTSTART;VALUE=DATE:{day}\nSUMMARY:At the <show>")


def test_a_file_is_read_and_what_it_keeps_the_van_in_for_is_shown(house, cab):
    file = SimpleUploadedFile("me.ics", tomorrow(), "text/calendar")
    answer = cab.post(page_of(house), {"name": "Mine", "file": file, "keeps_titles": "on"}, follow=True)
    page = answer.content.decode()
    assert "Mine is read" in page
    assert "(At the &lt;show&gt;)" in page
    assert "all day" in page


def test_of_an_address_only_the_machine_is_shown_since_the_rest_is_a_secret(house, cab):
    page = cab.post(page_of(house), {"name": "Mine", "url": URL}, follow=True).content.decode()
    assert "Mine is being read" in page
    assert "calendar.example" in page
    assert "private-3f9a" not in page
    assert Errand.objects.within(house.scope).filter(job="visits.fetch_days_off").count() == 1


@pytest.mark.parametrize(
    ("data", "words"),
    [
        ({}, "Give its address, or a file"),
        ({"url": "http://calendar.example/"}, "must begin with https://"),
        ({"url": "https://10.0.0.1/me.ics"}, "open internet"),
        ({"file": SimpleUploadedFile("me.ics", b"<html>")}, "not what the file holds"),
        ({"file": SimpleUploadedFile("me.ics", b"BEGIN:VCALENDAR\nnothing")}, "no calendar"),
        ({"file": SimpleUploadedFile("me.ics", b"BEGIN:VCALENDAR".ljust(2_000_001))}, "larger than 2 MB"),
        ({"name": "", "url": URL}, "What we call it"),
    ],
)
def test_what_is_to_mend_stands_on_the_page_and_nothing_typed_is_lost(house, cab, data, words):
    answer = cab.post(page_of(house), {"name": "My own name", **data})
    page = answer.content.decode()
    assert answer.status_code == 400
    assert words in page
    assert data.get("name", "My own name") in page
    assert data.get("url", "") in page
    assert not OutsideCalendar.objects.within(house.scope).exists()


def test_it_is_read_again_when_somebody_wants_it_and_taken_off(house, cab):
    row = own_calendar(house, url=URL)
    cab.post(reverse("outside_calendar_read", args=[row.pk]))
    assert Errand.objects.within(house.scope).get(job="visits.fetch_days_off").ids == {"calendar_id": row.pk}
    page = cab.post(reverse("outside_calendar_remove", args=[row.pk]), follow=True).content.decode()
    assert "No calendar of yours keeps" in page
    assert not OutsideCalendar.objects.within(house.scope).exists()


def test_a_calendar_that_could_not_be_read_says_so_and_since_when_it_counts(house, cab):
    now = timezone.now()
    own_calendar(
        house, url=URL, asked_at=now, fetched_at=now - timedelta(days=2), last_words="it took too long"
    )
    page = cab.get(page_of(house)).content.decode()
    assert "Not read" in page
    assert "it took too long" in page
    assert "still counts" in page


def test_the_vans_page_and_the_week_say_that_it_is_by_ones_own_calendar(house, cab):
    row = own_calendar(house, name="Mine")
    now = timezone.now()
    start = now.replace(hour=12) if now.hour < 12 else now
    OutsideBusy.objects.create(
        business=house.business, calendar=row, starts=start, ends=start + timedelta(hours=2)
    )
    for address in (reverse("vans"), reverse("this_week")):
        page = cab.get(address).content.decode()
        assert "From your own calendar" in page
        assert "(Mine)" in page
