"""Tokens on pages: made after one's password, seen once, revoked by oneself or the owner."""

import re
from datetime import timedelta

import pytest
from django.test import Client
from django.urls import reverse
from django.utils import timezone
from django.utils.html import escape

from tests.factories import PASSWORD, House, make_house
from trimops.accounts.actions import Action
from trimops.accounts.models import ApiToken
from trimops.accounts.roles import Role
from trimops.accounts.services.make_token import TokenWish, make_token

WORDS = {"name": "Farm office", "scopes": ["farms:see"], "lasts": "90"}


@pytest.fixture
def house(db) -> House:
    return make_house()


def sitting(user):
    client = Client()
    client.force_login(user)
    return client


def make(client, **words):
    """As in a browser: what was typed waits while the password is asked for once more."""
    asked = client.post(reverse("own_programs"), {**WORDS, **words})
    assert asked.status_code == 302
    assert asked["Location"].startswith(reverse("account_reauthenticate"))
    return client.post(asked["Location"], {"password": PASSWORD})


def token_of(house, role):
    wish = TokenWish("Theirs", {Action.SEE_FARMS}, timedelta(days=9))
    return make_token(membership=house.memberships[role], wish=wish, at=timezone.now())[0]


def test_a_token_is_made_shown_once_and_lets_the_program_in(house):
    client = sitting(house.trimmer)
    shown = make(client)
    (text,) = re.findall(r"trimops_[0-9a-f]{64}", shown.content.decode())
    assert shown["Cache-Control"] == "private, no-store"
    token = ApiToken.objects.get()
    days = (token.expiry - timezone.now()).days
    assert (token.name, token.scopes, token.user, days) == ("Farm office", ["farms:see"], house.trimmer, 89)
    again = client.get(reverse("own_programs")).content.decode()
    assert text not in again
    assert token.token_key in again
    assert Client().get("/api/v1/farms/", headers={"Authorization": f"Bearer {text}"}).status_code == 200


def test_a_wrong_password_makes_no_token(house):
    client = sitting(house.owner)
    asked = client.post(reverse("own_programs"), WORDS)
    assert client.post(asked["Location"], {"password": "not-it"}).status_code == 200
    assert not ApiToken.objects.exists()


def test_only_what_the_part_allows_is_offered_and_taken(house):
    client = sitting(house.trimmer)
    page = client.get(reverse("own_programs")).content.decode()
    assert 'value="farms:keep"' in page
    assert 'value="money:see"' not in page
    assert make(client, scopes=["money:see"]).status_code == 400
    assert not ApiToken.objects.exists()


def test_a_farm_clients_token_is_of_the_farm_that_they_look_at(house):
    make(sitting(house.client))
    assert ApiToken.objects.get().farm_key == house.farm.pk


def test_ones_own_is_revoked_and_nobody_elses(house):
    mine, theirs = token_of(house, Role.OFFICE), token_of(house, Role.TRIMMER)
    client = sitting(house.office)
    for token, status in ((mine, 302), (theirs, 404)):
        assert client.post(reverse("own_program_revoke"), {"token": token.pk}).status_code == status
    assert client.post(reverse("own_program_revoke"), {"token": "9" * 30}).status_code == 404
    assert client.post(reverse("program_revoke", args=[theirs.pk])).status_code == 403
    page = client.get(reverse("own_programs")).content.decode()
    assert "Revoked" in page
    assert [token.is_good(timezone.now()) for token in ApiToken.objects.order_by("pk")] == [False, True]


def test_the_owner_sees_and_revokes_everybodys_of_the_business(house):
    token, far = token_of(house, Role.TRIMMER), token_of(make_house("Fell & Beck"), Role.OWNER)
    client = sitting(house.owner)
    assert escape(house.trimmer.name) in client.get(reverse("programs")).content.decode()
    assert client.post(reverse("program_revoke", args=[token.pk])).status_code == 302
    assert client.post(reverse("program_revoke", args=[far.pk])).status_code == 404
    token.refresh_from_db()
    assert token.revoked_by == house.owner


def test_the_lists_ask_the_same_number_of_questions_however_many_there_are(
    house, django_assert_max_num_queries
):
    client = sitting(house.owner)
    for _ in range(9):
        token_of(house, Role.OWNER)
    for name in ("own_programs", "programs"):
        with django_assert_max_num_queries(9):
            client.get(reverse(name))
