"""What counts as a change by somebody else. Every such form is tried by tests/walls/test_every_form.py."""

import pytest
from django.test import Client
from django.urls import reverse

from farms.models import Farm
from tests.factories import House, make_house


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
