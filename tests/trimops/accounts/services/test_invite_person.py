"""A person is asked into a business by mail."""

import time
from datetime import timedelta

import pytest
from django.conf import settings
from django.core import mail
from django.core.exceptions import ValidationError
from django.utils import timezone

from tests.factories import NOON, make_business, make_member
from trimops.accounts.models import Membership, User
from trimops.accounts.roles import Role
from trimops.accounts.services.accept_invitation import accept_invitation
from trimops.accounts.services.end_membership import end_membership
from trimops.accounts.services.invite_person import (
    AlreadyAMember,
    Guest,
    InvitationSpent,
    invitation_token,
    invite_person,
    mail_invitation,
    membership_of_token,
)

GUEST = Guest("New.Trimmer@example.invalid", "A New Trimmer", Role.TRIMMER)


def invite(business, owner, guest=GUEST, at=NOON):
    return invite_person(business=business, guest=guest, at=at, by=owner.user)


def test_the_guest_is_waited_for_and_not_yet_in(business, owner):
    found = Membership.objects.get(pk=invite(business, owner).pk)
    assert (found.role, found.invited_by, found.joined_at) == ("trimmer", owner.user, None)
    assert not found.is_current
    assert (found.user.email, found.user.has_usable_password()) == ("new.trimmer@example.invalid", False)


def test_a_person_known_elsewhere_is_asked_in_as_the_person_they_are(business, owner):
    known = make_member(make_business("Fell & Beck"), Role.OWNER).user
    found = invite(business, owner, Guest(known.email.upper(), "Another Name", Role.OFFICE))
    assert found.user == known
    assert User.objects.get(pk=known.pk).name == known.name


def test_somebody_who_is_in_already_is_not_asked_again(business, owner):
    with pytest.raises(AlreadyAMember, match="as owner"):
        invite(business, owner, Guest(owner.user.email, "Me", Role.OFFICE))
    assert Membership.objects.get(pk=owner.pk).role == Role.OWNER


def test_an_address_that_is_none_is_refused(business, owner):
    with pytest.raises(ValidationError):
        invite(business, owner, Guest("no address", "Nobody", Role.OFFICE))
    assert Membership.objects.filter(business=business).count() == 1


def test_the_link_leads_to_the_invitation(business, owner):
    membership = invite(business, owner)
    assert membership_of_token(invitation_token(membership)) == membership


def test_asking_again_renews_the_link_and_the_old_one_dies(business, owner):
    old = invitation_token(invite(business, owner))
    renewed = invite(business, owner, at=NOON + timedelta(days=3))
    assert Membership.objects.filter(business=business).count() == 2
    with pytest.raises(InvitationSpent, match="used or withdrawn"):
        membership_of_token(old)
    assert membership_of_token(invitation_token(renewed)) == renewed


def test_a_used_link_is_spent(business, owner):
    membership = invite(business, owner)
    accept_invitation(membership=membership, password="long-enough-words", at=NOON)
    with pytest.raises(InvitationSpent, match="used or withdrawn"):
        membership_of_token(invitation_token(membership))


def test_a_withdrawn_link_is_spent(business, owner):
    membership = invite(business, owner)
    end_membership(membership=membership, at=NOON)
    with pytest.raises(InvitationSpent, match="used or withdrawn"):
        membership_of_token(invitation_token(membership))


def test_an_old_link_is_refused_and_one_a_day_younger_is_not(business, owner, monkeypatch):
    membership = invite(business, owner)
    token, now = invitation_token(membership), time.time()
    monkeypatch.setattr(time, "time", lambda: now + (settings.INVITATION_DAYS - 1) * 86_400)
    assert membership_of_token(token) == membership
    monkeypatch.setattr(time, "time", lambda: now + settings.INVITATION_DAYS * 86_400 + 60)
    with pytest.raises(InvitationSpent, match="too old"):
        membership_of_token(token)


@pytest.mark.parametrize("token", ["", "nonsense", "a:b:c"])
def test_a_link_we_did_not_sign_is_refused(db, token):
    with pytest.raises(InvitationSpent, match="too old or broken"):
        membership_of_token(token)


def test_a_link_that_somebody_bent_is_refused(business, owner):
    token = invitation_token(invite(business, owner))
    with pytest.raises(InvitationSpent):
        membership_of_token(("A" if token[0] != "A" else "B") + token[1:])


def test_the_mail_goes_out_after_the_commit_with_the_address(
    business, owner, django_capture_on_commit_callbacks
):
    membership = invite(business, owner)
    with django_capture_on_commit_callbacks(execute=True):
        mail_invitation(membership=membership, address="https://van.example/come-in/xyz/", at=timezone.now())
        assert mail.outbox == []
    (sent,) = mail.outbox
    assert sent.to == ["new.trimmer@example.invalid"]
    assert "https://van.example/come-in/xyz/" in sent.body
    assert business.name in sent.subject


def test_a_person_who_left_may_be_asked_back(business, owner):
    member = make_member(business, Role.TRIMMER)
    end_membership(membership=member, at=NOON)
    back = invite(business, owner, Guest(member.user.email, "", Role.OFFICE), at=NOON + timedelta(days=1))
    assert (back.pk, back.role, back.is_current) == (member.pk, "office", False)
    assert membership_of_token(invitation_token(back)) == back
