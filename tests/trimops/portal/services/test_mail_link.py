"""A link to sign in goes to a person of a farm."""

import re
import threading

import pytest
from django.core import mail, signing
from django.core.mail.backends.base import BaseEmailBackend

from farms.services.invite_farm_client import FarmGuest, invite_farm_client
from tests.factories import NOON
from trimops.accounts.services.invite_person import SALT
from trimops.portal.services.mail_link import mail_link
from trimops.portal.services.spend_link import owner_of_link


def send(email):
    secrets = []
    mail_link(
        email=email,
        address_of=lambda secret: secrets.append(secret) or f"https://site/{secret}/",
        invitation_at=lambda token: f"https://invitation/{token}/",
    )
    return secrets


def test_a_person_of_a_farm_gets_their_own_link(house, django_capture_on_commit_callbacks):
    with django_capture_on_commit_callbacks(execute=True):
        (secret,) = send(house.client.email.upper())
    assert owner_of_link(secret) == house.client
    (message,) = mail.outbox
    assert message.to == [house.client.email]
    assert f"https://site/{secret}/" in message.body


@pytest.mark.parametrize("who", ["owner", "nobody"])
def test_nobody_else_is_sent_anything(house, who, django_capture_on_commit_callbacks):
    email = house.owner.email if who == "owner" else "nobody@example.invalid"
    with django_capture_on_commit_callbacks(execute=True):
        assert send(email) == []
    assert mail.outbox == []


class SlowServer(BaseEmailBackend):
    """Takes a mail only when it is told to."""

    goes_on, took = threading.Event(), threading.Event()

    def send_messages(self, messages):
        if self.goes_on.wait(10):
            self.took.set()
        return len(messages)


def test_how_long_a_mail_takes_does_not_tell_that_there_was_one(
    house, settings, django_capture_on_commit_callbacks
):
    settings.EMAIL_BACKEND, settings.JOBS_RUN_APART = f"{__name__}.SlowServer", True
    with django_capture_on_commit_callbacks(execute=True):
        assert send(house.client.email)
    assert not SlowServer.took.is_set(), "the answer did not wait for it"
    SlowServer.goes_on.set()
    assert SlowServer.took.wait(10)


def test_who_has_not_taken_up_an_invitation_gets_it_once_more(house, django_capture_on_commit_callbacks):
    guest = FarmGuest("new@farm.example", "New Hand")
    membership = invite_farm_client(farm=house.farm, guest=guest, at=NOON, by=house.owner)
    with django_capture_on_commit_callbacks(execute=True):
        assert send("new@farm.example") == []
    token = re.search(r"https://invitation/(.+)/", mail.outbox[0].body)[1]
    membership.refresh_from_db()
    assert signing.loads(token, salt=SALT)["m"] == membership.pk
