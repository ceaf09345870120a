"""Calendar addresses and calendars that keep a van in, over the API."""

from datetime import timedelta

import pytest
from django.test import Client
from django.utils import timezone

from tests.factories import make_farm, planned
from tests.visits.api.caller import Caller, code_of
from tests.visits.documents.own_calendar import calendar
from trimops.api.models import RepeatableCall
from trimops.errands.models import Errand
from visits.models import CalendarAddress, OutsideCalendar

URL = "https://calendar.example/private-3f9a/me.ics"
WISH = {"name": "My phone", "alarm_minutes": 30}


def feed_of(answer):
    return Client().get(answer.json()["address"].removeprefix("http://testserver"))


def test_an_address_is_told_once_and_stands_nowhere(owner, house):
    planned(house.farm, house.van, timezone.now() + timedelta(days=1))
    made, again = (owner.post("/calendars/", {**WISH, "van": house.van.pk}, key="k") for _ in range(2))
    assert (made.status_code, again.status_code) == (201, 201)
    assert made["Cache-Control"] == again["Cache-Control"] == "private, no-store"
    assert again.json() == {**made.json(), "address": None}
    secret = made.json()["address"].rpartition("/")[2].removesuffix(".ics")
    assert secret not in str(RepeatableCall.objects.within(house.scope).get().body)
    assert CalendarAddress.objects.within(house.scope).count() == 1
    assert b"Low Croft" in feed_of(made).content
    closed = owner.post(f"/calendars/{made.json()['id']}/close/")
    assert closed.json()["revoked_at"]
    assert feed_of(made).status_code == 404
    assert owner.get("/calendars/?is_open=true").json()["items"] == []


def test_a_farm_client_has_the_addresses_of_their_farm_alone(client_of_farm, owner, house):
    owner.post("/calendars/", {**WISH, "van": house.van.pk})
    other = make_farm(house.business, "Elsewhere", by=house.owner)
    owner.post("/calendars/", {**WISH, "farm": other.pk})
    made = client_of_farm.post("/calendars/", WISH)
    assert (made.status_code, made.json()["farm"]) == (201, house.farm.pk)
    assert [row["id"] for row in client_of_farm.get("/calendars/").json()["items"]] == [made.json()["id"]]
    for strange in ({"trimmer": house.trimmer.pk}, {"farm": other.pk}):
        assert code_of(client_of_farm.post("/calendars/", {**WISH, **strange})) == (422, "cannot_be_meant")


@pytest.mark.parametrize("fields", [("van", "farm"), ("trimmer", "van")])
def test_a_calendar_shows_one_of_them(owner, house, fields):
    keys = {"van": house.van.pk, "farm": house.farm.pk, "trimmer": house.trimmer.pk}
    both = {**WISH, **{name: keys[name] for name in fields}}
    assert code_of(owner.post("/calendars/", both)) == (422, "cannot_be_meant")
    stranger = {**WISH, "trimmer": 987654}
    assert code_of(owner.post("/calendars/", stranger)) == (422, "cannot_be_meant")
    assert owner.post("/calendars/", {**WISH, "trimmer": house.trimmer.pk}).status_code == 201


def test_a_file_keeps_the_van_in_until_it_is_taken_off(owner, house):
    day = (timezone.now() + timedelta(days=1)).strftime("%Y%m%d")
    text = calendar(f"DTSTART;VALUE=DATE:{day}\nSUMMARY:At the show").decode()
    at = f"/vans/{house.van.pk}/outside-calendars/"
    added = owner.post(at, {"name": "Mine", "file": text, "keeps_titles": True})
    assert (added.status_code, added.json()["is_file"]) == (201, True), added.content
    one = added["Location"].removeprefix("/api/v1")
    (busy,) = owner.get(f"{one}busy/").json()["items"]
    assert (busy["summary"], busy["is_all_day"]) == ("At the show", True)
    assert owner.delete(one).status_code == 204
    assert not OutsideCalendar.objects.within(house.scope).exists()


def test_an_address_is_read_soon_and_never_shown(owner, house):
    at = f"/vans/{house.van.pk}/outside-calendars/"
    added = owner.post(at, {"name": "Mine", "url": URL})
    assert added.status_code == 201
    assert b"private-3f9a" not in added.content
    before = Errand.objects.within(house.scope).count()
    assert owner.post(f"/outside-calendars/{added.json()['id']}/read/").status_code == 200
    assert Errand.objects.within(house.scope).count() == before + 1
    for wrong in ({}, {"url": URL}, {"file": "no calendar"}, {"url": "file:///etc/passwd"}):
        assert code_of(owner.post(at, {"name": "Mine", **wrong})) == (409, "calendar_refused"), wrong
    assert code_of(Caller(house.office).get(at)) == (403, "not_allowed")
