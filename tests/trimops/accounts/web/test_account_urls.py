"""Ways of the sign-in library that are shut, and signing out elsewhere after showing that it is oneself."""

import pytest
from allauth.usersessions.models import UserSession
from django.core.cache import cache
from django.test import Client
from django.urls import reverse

from tests.factories import PASSWORD, House, make_house
from trimops.accounts.models import User


@pytest.fixture
def house(db) -> House:
    cache.clear()
    return make_house()


def signed_in(user):
    client = Client()
    client.post(reverse("account_login"), {"login": user.email, "password": PASSWORD})
    return client


def is_in(client):
    return "_auth_user_id" in client.session


@pytest.mark.parametrize("path", ["email/", "confirm-email/", "confirm-email/MQ:abc/", "login/code/confirm/"])
def test_what_nobody_set_up_is_not_there(house, path):
    client = signed_in(house.owner)
    for answer in (client.get(f"/account/{path}"), client.post(f"/account/{path}", {"email": "x@x.example"})):
        assert answer.status_code == 404


def test_nobody_changes_their_address_and_nobody_signs_up(house):
    client = signed_in(house.owner)
    words = {"email": "mine@elsewhere.example", "action_add": "", "action_primary": ""}
    client.post("/account/email/", words)
    house.owner.refresh_from_db()
    assert house.owner.email != "mine@elsewhere.example"
    before = User.objects.count()
    new = {
        "email": "new@x.example",
        "password1": "a-cow-called-buttercup",
        "password2": "a-cow-called-buttercup",
    }
    Client().post("/account/signup/", new)
    assert User.objects.count() == before


@pytest.mark.parametrize("everywhere", [False, True])
def test_signing_out_elsewhere_asks_for_the_password_first(house, everywhere):
    here, there = signed_in(house.owner), signed_in(house.owner)
    place = UserSession.objects.get(session_key=there.session.session_key)
    address, words = ("usersessions_list", {}) if everywhere else ("device_sign_out", {"device": place.pk})
    asked = here.post(reverse(address), words)
    assert asked["Location"].startswith(reverse("account_reauthenticate"))
    assert is_in(there)
    done = here.post(asked["Location"], {"password": PASSWORD})
    assert done["Location"] == reverse("usersessions_list")
    assert (is_in(here), is_in(there)) == (True, False)
    assert [each.user for each in UserSession.objects.all()] == [house.owner]
