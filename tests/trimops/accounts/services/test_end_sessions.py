"""Sign-ins of a person end."""

import pytest
from allauth.usersessions.models import UserSession
from django.conf import settings
from django.core.management import CommandError, call_command
from django.test import Client
from django.urls import reverse

from tests.factories import NOON, PASSWORD, make_business, make_member, make_user
from trimops.accounts.roles import Role
from trimops.accounts.services.end_membership import end_membership
from trimops.accounts.services.end_sessions import end_all_sessions, end_session, end_sessions


def signed_in(user):
    client = Client()
    answer = client.post(reverse("account_login"), {"login": user.email, "password": PASSWORD})
    assert answer.status_code == 302
    return client


def is_in(client):
    return "_auth_user_id" in client.session


def test_all_of_one_person_end_and_nobody_elses(business, owner):
    mine = [signed_in(owner.user) for _ in range(2)]
    other = signed_in(make_user())
    assert end_sessions(user=owner.user) == 2
    assert [is_in(client) for client in (*mine, other)] == [False, False, True]
    assert not UserSession.objects.filter(user=owner.user).exists()


def test_whoever_keeps_the_machine_signs_out_one_or_all(business, owner, capsys):
    other = make_member(business, Role.OFFICE)
    mine, theirs = signed_in(owner.user), signed_in(other.user)
    call_command("end_sessions", owner.user.email.upper())
    assert (is_in(mine), is_in(theirs)) == (False, True)
    with pytest.raises(CommandError, match="Nobody has this address"):
        call_command("end_sessions", "nobody@x.example")
    mine = signed_in(owner.user)
    call_command("end_sessions", "--all")
    assert (is_in(mine), is_in(theirs)) == (False, False)
    assert capsys.readouterr().out == "1 signed out.\n2 signed out.\n"
    assert end_all_sessions() == 0


def test_one_ends_and_the_other_goes_on(owner):
    here, there = signed_in(owner.user), signed_in(owner.user)
    key = there.cookies[settings.SESSION_COOKIE_NAME].value
    end_session(place=UserSession.objects.get(session_key=key))
    assert (is_in(here), is_in(there)) == (True, False)


def test_who_leaves_their_only_business_is_signed_out_and_who_has_another_is_not(business, owner):
    gone, moved = make_member(business, Role.TRIMMER), make_member(business, Role.OFFICE)
    make_member(make_business("Fell & Beck"), Role.OFFICE, moved.user)
    clients = [signed_in(member.user) for member in (gone, moved)]
    for member in (gone, moved):
        end_membership(membership=member, at=NOON)
    assert [is_in(client) for client in clients] == [False, True]
