"""Who was let in for one farm is forgotten; who has another place keeps their name."""

from datetime import timedelta

import pytest
from allauth.account.models import EmailAddress
from django.contrib.sessions.models import Session
from django.test import Client

from tests.factories import NOON, PASSWORD, make_business, make_member, make_user
from trimops.accounts.actions import Action
from trimops.accounts.models import ApiToken, Membership, User
from trimops.accounts.roles import Role
from trimops.accounts.services.forget_person import forget_person
from trimops.accounts.services.make_token import TokenWish, make_token
from trimops.accounts.services.note_token_use import note_token_use
from trimops.audit.models import AuditEntry
from trimops.kernel.scope import Scope


@pytest.fixture
def member(db):
    return make_member(make_business(), Role.FARM)


def test_a_person_of_one_farm_alone_has_no_name_no_address_and_no_way_in(member):
    address = member.user.email
    EmailAddress.objects.create(user=member.user, email=address, primary=True, verified=True)
    assert forget_person(membership=member, at=NOON)
    user = User.objects.get(pk=member.user.pk)
    assert (user.name, user.email) == (f"Erased person {user.pk}", f"erased-{user.pk}@erased.invalid")
    assert not user.is_active
    assert not user.has_usable_password()
    assert not EmailAddress.objects.exists()
    assert Membership.objects.get(pk=member.pk).ended_at == NOON


def test_no_program_says_whose_it_was_or_where_from(member):
    wish = TokenWish("Ann's tablet", {Action.SEE_FARMS}, timedelta(days=7))
    token, _ = make_token(membership=member, wish=wish, at=NOON)
    note_token_use(token=token, address="203.0.113.7", at=NOON)
    forget_person(membership=member, at=NOON)
    for rows in (ApiToken.objects.values(), AuditEntry.objects.within(Scope(member.business_id)).values()):
        assert "Ann's tablet" not in str(list(rows))
        assert "203.0.113.7" not in str(list(rows))
    assert ApiToken.objects.get().revoked_at == NOON


def test_a_person_of_another_business_too_only_loses_this_place(member):
    make_member(make_business("Fell & Beck"), Role.FARM, member.user)
    before = member.user.name
    assert not forget_person(membership=member, at=NOON)
    user = User.objects.get(pk=member.user.pk)
    assert (user.name, user.is_active) == (before, True)
    assert Membership.objects.get(pk=member.pk).ended_at == NOON


def test_no_session_keeps_the_address_that_a_forgotten_person_signed_in_with(member):
    browsers = [Client(), Client()]
    for browser, user in zip(browsers, (member.user, make_user()), strict=True):
        assert browser.post("/account/login/", {"login": user.email, "password": PASSWORD}).status_code == 302
    kept = [session.get_decoded()["_auth_user_id"] for session in Session.objects.all()]
    assert len(kept) == 2
    forget_person(membership=member, at=NOON)
    (left,) = Session.objects.all()
    assert left.get_decoded()["_auth_user_id"] != str(member.user.pk)
