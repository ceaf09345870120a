"""A new password and the programs that come in as its person."""

import logging
from datetime import timedelta
from urllib.parse import urlsplit

import pytest
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from tests.factories import PASSWORD, House, make_house
from trimops.accounts.actions import Action
from trimops.accounts.roles import Role
from trimops.accounts.services.make_token import TokenWish, make_token
from trimops.outbox.models import Outgoing

NEW = "a-cow-called-buttercup"
CHANGE = {"oldpassword": PASSWORD, "password1": NEW, "password2": NEW}


@pytest.fixture
def house(db) -> House:
    return make_house()


def token_of(house, role=Role.OWNER):
    wish = TokenWish("Farm office", {Action.SEE_FARMS}, timedelta(days=9))
    return make_token(membership=house.memberships[role], wish=wish, at=timezone.now())[1]


def lets_in(text):
    answer = Client().get("/api/v1/farms/", headers={"Authorization": f"Bearer {text}"})
    return answer.status_code == 200


def changed(user, **words):
    client = Client()
    client.force_login(user)
    return client.post(reverse("account_change_password"), {**CHANGE, **words})


def told(house):
    return Outgoing.objects.within(house.scope).latest("pk").body


def test_a_password_set_by_mail_shuts_all_programs_of_its_person_out_and_the_mail_says_so(
    house, mailoutbox, caplog
):
    caplog.set_level(logging.INFO, logger="trimops.security")
    mine, others = token_of(house), token_of(house, Role.TRIMMER)
    client = Client()
    client.post(reverse("account_reset_password"), {"email": house.owner.email})
    link = next(word for word in mailoutbox[-1].body.split() if word.startswith("http"))
    form = client.get(urlsplit(link).path, follow=True)
    path = form.request["PATH_INFO"]
    client.post(path, {"password1": NEW, "password2": "another-one"})
    assert lets_in(mine)
    done = client.post(path, {"password1": NEW, "password2": NEW}, follow=True)
    assert "needs a new token" in done.content.decode()
    assert [lets_in(text) for text in (mine, others)] == [False, True]
    assert "are shut out" in told(house)
    lines = [record.told for record in caplog.records if record.name == "trimops.security"]
    assert [line["programs"] for line in lines if line["event"] == "token_revoked"] == [1]


@pytest.mark.parametrize("ends", [True, False])
def test_who_changes_their_password_says_what_becomes_of_their_programs(house, ends):
    texts = [token_of(house), token_of(house)]
    answer = changed(house.owner, **({"end_programs": "on"} if ends else {}))
    assert answer.status_code == 302
    assert [lets_in(text) for text in texts] == [not ends] * 2
    assert ("2 tokens of yours still let programs in as you" in told(house)) is not ends


def test_a_wrong_old_password_ends_no_program(house):
    text = token_of(house)
    assert changed(house.owner, oldpassword="wrong", end_programs="on").status_code == 200
    assert lets_in(text)


def test_who_has_no_program_is_not_asked(house):
    client = Client()
    client.force_login(house.owner)
    page = reverse("account_change_password")
    assert "end_programs" not in client.get(page).content.decode()
    text = token_of(house)
    assert "1 of yours lets a program in as you" in client.get(page).content.decode()
    assert lets_in(text)
