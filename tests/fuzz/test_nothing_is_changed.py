"""A file that is refused has changed nothing anywhere: each way in, through its address, with spoilt files."""

import logging
from datetime import timedelta
from random import Random
from uuid import uuid4

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client
from django.urls import reverse

from tests.factories import make_house, make_kit, make_prices, under_way
from tests.fuzz.inlets import INLETS
from tests.fuzz.mangle import mangled
from tests.fuzz.whole_database import whole_database
from visits.models import TrimPhoto
from visits.services.kit.stock_place import place_of_van, store_of

TURNS = 5
OVER = (
    *(b"", b"\x00" * 50, b"%PDF-1.7\n\xe2\xe3\xcf\xd3" + bytes(99) + b"\x8d\x81", b"MZ\x90\x00" + bytes(60)),
    *(b"<html><script>alert(1)</script></html>", b"PK\x03\x04" + bytes(60), b"=1+1\n=cmd|' /C calc'!A0\n"),
)


@pytest.fixture(autouse=True)
def _quiet(caplog):
    caplog.set_level(logging.CRITICAL, logger="django.request")


@pytest.fixture
def house(db):
    house = make_house()
    make_prices(house.business)
    make_kit(house.business)
    place_of_van(house.van)  # because: a place of stock is made when somebody asks for it first
    store_of(house.scope)
    return house


@pytest.fixture
def owner(house):
    browser = Client(raise_request_exception=True)
    browser.force_login(house.owner)
    return browser


def _rules(owner):
    """What stands in the form of the money rules, so that nothing but the logo can be wrong."""
    form = owner.get(reverse("money_rules")).context["form"]
    values = {field.html_name: field.value() for field in form}
    return {name: value for name, value in values.items() if value not in (None, "", False)}


UPLOADS = {
    "herd list": ("herd_list", "herd_list", lambda house, owner: {}),
    "scores": ("mobility", "file", lambda house, owner: {"scored_on": "2026-03-02", "scale": "UK0-3"}),
    "kit list": ("kit_read_in", "file", lambda house, owner: {"uid": str(uuid4())}),
    "CAMT.053": ("bank", "file", lambda house, owner: {}),
    "logo": ("money_rules", "picture", lambda house, owner: _rules(owner)),
    "calendar": ("van_calendars", "file", lambda house, owner: {"name": "Mine"}),
}
FEWER = {"calendar": 2}
"""Each is read in a process of its own."""


def _address(name, house):
    rows = {"herd_list": house.farm.pk, "van_calendars": house.van.pk, "mobility": house.farm.pk}
    return reverse(name, args=[rows[name]] if name in rows else [])


def _spoilt(name, turns):
    inlet, dice = INLETS[name], Random(f"pages {name}")
    return [*OVER[:turns], *(mangled(dice.choice(inlet.real()), inlet.real(), dice) for _ in range(turns))]


@pytest.mark.parametrize("name", UPLOADS)
def test_a_file_refused_by_a_page_changes_nothing(name, house, owner):
    address, field, beside = UPLOADS[name]
    data = beside(house, owner)
    refused = 0
    before = whole_database()
    for content in _spoilt(name, FEWER.get(name, TURNS)):
        upload = SimpleUploadedFile("file.bin", content, content_type="application/octet-stream")
        answer = owner.post(_address(address, house), {**data, field: upload})
        assert answer.status_code in (200, 302, 400), answer.status_code
        after = whole_database()
        if answer.status_code == 400:
            refused += 1
            assert after == before, [table for table in after if after[table] != before[table]]
            assert answer.context["form"].errors, "what to mend is said"
        before = after
    assert refused >= 2


@pytest.fixture
def visit(house):
    return under_way(house.farm, house.van)


@pytest.fixture
def trimmer(house):
    browser = Client()
    browser.force_login(house.trimmer)
    return browser


def test_a_photo_refused_changes_nothing(house, trimmer, visit):
    taken = (visit.started_at + timedelta(minutes=5)).isoformat()
    refused = 0
    before = whole_database()
    for content in _spoilt("photo", 7):
        address = reverse("crush_photo", kwargs={"pk": visit.pk, "uid": uuid4()})
        query = {"record": str(uuid4()), "foot": "LH", "taken_at": taken}
        answer = trimmer.put(address, content, content_type="image/jpeg", query_params=query)
        assert answer.status_code in (201, 400)
        after = whole_database()
        if answer.status_code == 400:
            refused += 1
            assert after == before
            assert [fault["field"] for fault in answer.json()["faults"]] == ["body"]
        before = after
    assert refused >= 5
    assert TrimPhoto.objects.within(house.scope).count() == 14 - refused


def test_a_sending_of_a_phone_refused_changes_nothing(trimmer, visit):
    address, refused = reverse("crush_writings", kwargs={"pk": visit.pk}), 0
    before = whole_database()
    for content in _spoilt("crush batch", 12):
        answer = trimmer.post(address, content, content_type="application/json")
        assert answer.status_code in (200, 400, 409), answer.content
        after = whole_database()
        if answer.status_code != 200:
            refused += 1
            assert after == before
            assert answer["Content-Type"] == "application/problem+json"
        before = after
    assert refused >= 10


@pytest.mark.parametrize(
    "name", ["herd_list", "mobility", "bank", "kit_read_in", "van_calendars", "money_rules"]
)
def test_a_film_is_refused_by_its_size_before_it_is_read(name, house, owner):
    field = next(field for address, field, _ in UPLOADS.values() if address == name)
    film = SimpleUploadedFile("herd.csv", b"Number\n" + b"7\n" * (3 * 1024 * 1024))
    before = whole_database()
    answer = owner.post(_address(name, house), {field: film})
    assert answer.status_code in (400, 413)
    assert whole_database() == before
