"""Who lost every second step comes in by the password again, after somebody made sure of them."""

import pytest
from allauth.mfa.models import Authenticator
from allauth.mfa.recovery_codes.internal.auth import RecoveryCodes
from allauth.mfa.totp.internal.auth import TOTP, generate_totp_secret
from django.core.cache import cache
from django.core.management import CommandError, call_command
from django.test import Client
from django.urls import reverse

from tests.factories import NOON, PASSWORD, make_user
from trimops.accounts.services.drop_second_step import drop_second_step
from trimops.kernel.scope import Scope
from trimops.outbox.models import Outgoing


def sign_in(user):
    cache.clear()
    client = Client()
    client.post(reverse("account_login"), {"login": user.email, "password": PASSWORD})
    return client


def is_in(client):
    return "_auth_user_id" in client.session


def test_steps_and_sign_ins_go_and_the_person_is_told(business, owner, capsys):
    other = make_user()
    inside = sign_in(owner.user)
    for user in (owner.user, other):
        TOTP.activate(user, generate_totp_secret())
        RecoveryCodes.activate(user)
    assert not is_in(sign_in(owner.user))
    call_command("drop_second_step", owner.user.email.upper())
    assert capsys.readouterr().out.startswith("1 taken away.")
    assert not is_in(inside)
    assert is_in(sign_in(owner.user))
    assert Authenticator.objects.filter(user=other).count() == 2
    mail = Outgoing.objects.within(Scope(business.pk)).get()
    assert (mail.address, mail.subject) == (owner.user.email, "Your second step was taken away")


def test_where_there_is_none_nothing_happens_and_nobody_is_told(business, owner):
    inside = sign_in(owner.user)
    assert drop_second_step(user=owner.user, at=NOON) == 0
    assert is_in(inside)
    assert not Outgoing.objects.within(Scope(business.pk)).exists()


def test_an_address_of_nobody_is_told_so(db):
    with pytest.raises(CommandError, match="Nobody has this address"):
        call_command("drop_second_step", "nobody@x.example")
