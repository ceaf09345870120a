"""Who guesses passwords is made to wait; the person themselves is not shut out by it."""

import time
from urllib.parse import urlsplit

import pytest
from django.core.cache import cache
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from tests.factories import PASSWORD, make_house, make_user
from trimops.accounts.roles import Role
from trimops.accounts.services.invite_person import Guest, invitation_token, invite_person


@pytest.fixture(autouse=True)
def _nobody_tried_yet():
    cache.clear()
    yield
    cache.clear()


@pytest.fixture
def user(db):
    return make_user()


def attempt(email, password="wrong", client=None, **meta):
    return (client or Client()).post(reverse("account_login"), {"login": email, "password": password}, **meta)


def test_an_address_waits_after_ten_wrong_passwords_wherever_they_come_from(user):
    for number in range(10):
        assert attempt(user.email, REMOTE_ADDR=f"203.0.113.{number}").status_code == 200
    refused = attempt(user.email.upper(), PASSWORD, REMOTE_ADDR="203.0.113.99")
    assert refused.status_code == 429
    assert 840 <= int(refused["Retry-After"]) <= 901
    page = refused.content.decode()
    assert "come again in 15 minutes" in page
    assert "a passkey, or a new password by mail, still lets you in" in page
    assert "_auth_user_id" not in Client().session


def test_an_invitation_is_no_way_round_the_wait(user):
    far = make_house()
    asked = invite_person(
        business=far.business, guest=Guest(user.email, "x", Role.OFFICE), at=timezone.now(), by=far.owner
    )
    link = reverse("invitation", args=[invitation_token(asked)])
    for _ in range(10):
        assert Client().post(link, {"password": "wrong"}).status_code == 400
    assert Client().post(link, {"password": PASSWORD}).status_code == 429
    asked.refresh_from_db()
    assert asked.joined_at is None


def test_the_wait_ends_by_itself(user, monkeypatch):
    for _ in range(10):
        attempt(user.email)
    wait = int(attempt(user.email, PASSWORD)["Retry-After"])
    now = time.time()
    monkeypatch.setattr("allauth.core.internal.ratelimit.time.time", lambda: now + wait)
    assert attempt(user.email, PASSWORD).status_code == 302


def test_one_machine_waits_whatever_addresses_it_tries(db):
    told = [attempt(f"somebody-{number}@example.invalid").status_code for number in range(21)]
    assert told == [200] * 20 + [429]
    assert attempt("another@example.invalid", REMOTE_ADDR="203.0.113.5").status_code == 200


def test_whoever_is_signed_in_stays_so_while_a_stranger_guesses(db):
    house = make_house()
    client = Client()
    client.force_login(house.owner)
    for _ in range(11):
        told = attempt(house.owner.email)
    assert told.status_code == 429
    assert client.get(reverse("this_week")).status_code == 200


def test_right_passwords_in_between_buy_no_more_tries(user):
    for _ in range(9):
        attempt(user.email)
    assert attempt(user.email, PASSWORD).status_code == 302
    assert attempt(user.email).status_code == 200
    assert attempt(user.email).status_code == 429


def test_an_unknown_address_is_answered_in_the_same_words(user):
    known, unknown = attempt(user.email), attempt("nobody@example.invalid")
    assert known.status_code == unknown.status_code

    def words(answer, email):
        return answer.content.decode().replace(email, "").split("<main")[1].split("csrfmiddlewaretoken")[0]

    assert words(known, user.email) == words(unknown, "nobody@example.invalid")


@pytest.mark.parametrize(
    ("password", "is_taken"),
    [
        ("short-one", False),
        ("1234567890", False),
        ("basketball1", False),
        ("Trimops2026!", False),
        ("hooftrimmer99", False),
        ("farmcowcrush", False),
        ("83920174650192", True),
        ("a-cow-called-buttercup-sings", True),
        (" spaces and ünïcode, £ & all ", True),
        ("x" * 40 + "y" * 88, True),
    ],
)
def test_passwords_are_judged_by_length_and_by_what_others_would_try_and_by_nothing_else(
    user, password, is_taken
):
    client = Client()
    client.force_login(user)
    words = {"oldpassword": PASSWORD, "password1": password, "password2": password}
    answer = client.post(reverse("account_change_password"), words)
    assert (answer.status_code == 302) is is_taken
    assert (attempt(user.email, password).status_code == 302) is is_taken


def test_a_new_password_ends_all_other_sign_ins_and_keeps_this_one(user):
    here, there = Client(), Client()
    for client in (here, there):
        attempt(user.email, PASSWORD, client)
    new = "a-cow-called-buttercup"
    here.post(
        reverse("account_change_password"), {"oldpassword": PASSWORD, "password1": new, "password2": new}
    )
    page = reverse("usersessions_list")
    assert here.get(page).status_code == 200
    assert there.get(page).status_code == 302


def test_signing_in_gives_a_new_session_key(user):
    client = Client()
    client.get(reverse("account_login"))
    session = client.session
    session["seen"] = True
    session.save()
    before = session.session_key
    attempt(user.email, PASSWORD, client)
    assert client.session.session_key != before


def test_a_new_password_by_mail_ends_the_wait_for_its_person(user, mailoutbox):
    for number in range(11):
        attempt(user.email, REMOTE_ADDR=f"203.0.113.{number}")
    client = Client()
    client.post(reverse("account_reset_password"), {"email": user.email})
    link = next(word for word in mailoutbox[-1].body.split() if word.startswith("http"))
    form = client.get(urlsplit(link).path, follow=True)
    new = "a-cow-called-buttercup"
    client.post(form.request["PATH_INFO"], {"password1": new, "password2": new})
    assert attempt(user.email, new).status_code == 302
