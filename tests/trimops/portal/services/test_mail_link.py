"""A link to sign in goes to a person of a farm."""

import re
import threading
from datetime import timedelta

import pytest
from django.core import mail, signing
from django.utils import timezone

from farms.services.invite_farm_client import FarmGuest, invite_farm_client
from tests.factories import make_house
from tests.many_hands import ManyHands
from trimops.accounts.services.invite_person import SALT
from trimops.errands.services.hand_out import BESIDE
from trimops.outbox.domain.outgoing_states import Channel
from trimops.outbox.models import Outgoing
from trimops.outbox.senders.senders import SENDERS
from trimops.portal.services.mail_link import mail_link
from trimops.portal.services.spend_link import owner_of_link


def send(email):
    secrets = []
    mail_link(
        email=email,
        mark="here",
        address_of=lambda secret: secrets.append(secret) or f"https://site/{secret}/",
        invitation_at=lambda token: f"https://invitation/{token}/",
        at=timezone.now(),
    )
    return secrets


def test_a_person_of_a_farm_gets_their_own_link(house, django_capture_on_commit_callbacks):
    with django_capture_on_commit_callbacks(execute=True):
        (secret,) = send(house.client.email.upper())
    assert owner_of_link(secret, "here") == house.client
    (message,) = mail.outbox
    assert message.to == [house.client.email]
    assert f"https://site/{secret}/" in message.body


@pytest.mark.parametrize("who", ["owner", "nobody"])
def test_nobody_else_is_sent_anything(house, who, django_capture_on_commit_callbacks):
    email = house.owner.email if who == "owner" else "nobody@example.invalid"
    with django_capture_on_commit_callbacks(execute=True):
        assert send(email) == []
    assert mail.outbox == []


@pytest.fixture
def slow_server(settings, monkeypatch):
    """Takes a mail only when it is told to."""
    goes_on, took = threading.Event(), []

    def send(ready):
        assert goes_on.wait(10)
        took.append(ready)
        return "250"

    settings.JOBS_RUN_APART = True
    monkeypatch.setitem(SENDERS, Channel.MAIL, send)
    return goes_on, took


@pytest.mark.django_db(transaction=True)
def test_how_long_a_mail_takes_does_not_tell_that_there_was_one(slow_server, tmp_path, monkeypatch):
    goes_on, took = slow_server
    house = make_house()
    hands = ManyHands(tmp_path, monkeypatch)
    assert hands(lambda _: len(send(house.client.email)), [0]) == [1]
    assert took == [], "the answer did not wait for it"
    goes_on.set()
    BESIDE.submit(len, "").result(10)
    assert [ready.address for ready in took] == [house.client.email]


def test_the_secret_lies_here_only_until_it_went(house, django_capture_on_commit_callbacks):
    with django_capture_on_commit_callbacks(execute=True):
        (secret,) = send(house.client.email)
        row = Outgoing.objects.within(house.scope).get()
        assert (row.secret, row.topic) == (f"https://site/{secret}/", "sign_in")
        assert secret not in row.body
        assert row.worthless_after - row.written_at == timedelta(hours=1)
    row.refresh_from_db()
    assert (row.state, row.secret) == ("went", "")


def test_who_has_not_taken_up_an_invitation_gets_it_once_more(house, django_capture_on_commit_callbacks):
    guest = FarmGuest("new@farm.example", "New Hand")
    membership = invite_farm_client(farm=house.farm, guest=guest, at=timezone.now(), by=house.owner)
    with django_capture_on_commit_callbacks(execute=True):
        assert send("new@farm.example") == []
    token = re.search(r"https://invitation/(.+)/", mail.outbox[0].body)[1]
    membership.refresh_from_db()
    assert signing.loads(token, salt=SALT)["m"] == membership.pk
