"""A form shown before somebody else changed the row says so, keeps what was typed, goes on the next press."""

import pytest
from django.test import Client
from django.urls import reverse

from farms.models import Contact, Cow, Farm, Payer
from tests.factories import House, make_blade, make_house
from visits.models import Blade, Van, WatchContact


@pytest.fixture
def house(db) -> House:
    return make_house()


@pytest.fixture
def browser(house):
    client = Client()
    client.force_login(house.owner)
    return client


def form_at(browser, address):
    """What a browser would send back of the form as it is shown now."""
    form = browser.get(address).context["form"]
    told = {name: form[name].value() for name in form.fields}
    return {name: value for name, value in told.items() if value is not None and value is not False}


def row_of(house, model):
    return model.objects.within(house.scope).first()


PAGES = [
    (Farm, "farm_edit", lambda row: [row.pk], "access_notes"),
    (Cow, "cow_edit", lambda row: [row.farm_id, row.pk], "note"),
    (Payer, "payer", lambda row: [row.pk], "address"),
    (Van, "van", lambda row: [row.pk], "base_name"),
    (Blade, "blade_edit", lambda row: [row.pk], "note"),
    (Contact, "contact", lambda row: [row.farm_id, row.pk], "part"),
    (WatchContact, "watch_contact", lambda row: [row.pk], "email"),
]


@pytest.mark.parametrize(("model", "route", "keys", "name"), PAGES)
def test_what_somebody_else_changed_meanwhile_is_not_written_over_unseen(
    house, browser, model, route, keys, name
):
    Payer.objects.create(business=house.business, name="A Payer")
    Contact.objects.create(business=house.business, farm=house.farm, name="The herd manager")
    WatchContact.objects.create(business=house.business, name="At home", phone="+441632960000")
    make_blade(house.van, "The short one")
    address = reverse(route, args=keys(row_of(house, model)))
    mine, theirs = (form_at(browser, address) for _ in range(2))
    answer = browser.post(address, {**theirs, name: "theirs@home.example"})
    assert answer.status_code == 302, answer.context["form"].errors
    refused = browser.post(address, {**mine, name: "mine@home.example"})
    assert refused.status_code == 409
    words = refused.content.decode()
    assert "Somebody changed this while you had it open." in words
    assert "Different from what it says now" in words
    assert "mine@home.example" in words
    assert getattr(row_of(house, model), name) == "theirs@home.example"
    shown = refused.context["form"]
    assert (
        browser.post(address, {**mine, name: "mine@home.example", "seen": shown["seen"].value()}).status_code
        == 302
    )
    assert getattr(row_of(house, model), name) == "mine@home.example"


def test_an_ear_tag_given_meanwhile_is_a_change_of_the_cow_too(house, browser):
    address = reverse("cow_edit", args=[house.farm.pk, house.cow.pk])
    mine, theirs = (form_at(browser, address) for _ in range(2))
    assert browser.post(address, {**theirs, "collar": "77"}).status_code == 302
    assert browser.post(address, {**mine, "note": "Kicks"}).status_code == 409


def test_a_form_that_nobody_changed_behind_is_kept(house, browser):
    address = reverse("farm_edit", args=[house.farm.pk])
    assert browser.post(address, {**form_at(browser, address), "herd_size": 7}).status_code == 302
    assert row_of(house, Farm).herd_size == 7


def test_what_else_is_to_be_mended_is_no_change_by_somebody_else(house, browser):
    address = reverse("farm_edit", args=[house.farm.pk])
    refused = browser.post(address, {**form_at(browser, address), "herd_size": "many"})
    assert refused.status_code == 400
    assert "Somebody changed this" not in refused.content.decode()
