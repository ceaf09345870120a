"""A person takes up an invitation."""

from datetime import timedelta

import pytest
from django.core.exceptions import ValidationError

from tests.factories import NOON, PASSWORD, make_business, make_member
from trimops.accounts.models import Membership, User
from trimops.accounts.roles import Role
from trimops.accounts.services.accept_invitation import accept_invitation
from trimops.accounts.services.end_membership import end_membership
from trimops.accounts.services.invite_person import Guest, InvitationSpent, invite_person

LATER = NOON + timedelta(hours=2)


@pytest.fixture
def invited(business, owner):
    guest = Guest("new@example.invalid", "A New Trimmer", Role.TRIMMER)
    return invite_person(business=business, guest=guest, at=NOON, by=owner.user)


@pytest.fixture
def invited_again(business, owner):
    """Somebody who has an account from another business."""
    known = make_member(make_business("Fell & Beck"), Role.OWNER).user
    return invite_person(business=business, guest=Guest(known.email, "", Role.OFFICE), at=NOON, by=owner.user)


def test_a_new_person_comes_in_with_the_password_they_chose(invited):
    accept_invitation(membership=invited, password="three-sound-claws", at=LATER)
    stored = Membership.objects.get(pk=invited.pk)
    assert (stored.joined_at, stored.is_current) == (LATER, True)
    assert User.objects.get(pk=stored.user_id).check_password("three-sound-claws")


@pytest.mark.parametrize("weak", ["short", "1234567890", "password12"])
def test_a_weak_password_is_refused_and_nobody_comes_in(invited, weak):
    with pytest.raises(ValidationError):
        accept_invitation(membership=invited, password=weak, at=LATER)
    stored = Membership.objects.get(pk=invited.pk)
    assert (stored.joined_at, stored.user.has_usable_password()) == (None, False)


def test_a_person_with_an_account_comes_in_by_its_password_which_stays(invited_again):
    accept_invitation(membership=invited_again, password=PASSWORD, at=LATER)
    assert Membership.objects.get(pk=invited_again.pk).is_current
    assert User.objects.get(pk=invited_again.user_id).check_password(PASSWORD)


def test_whoever_holds_the_link_cannot_set_another_persons_password(invited_again):
    with pytest.raises(InvitationSpent, match="account already"):
        accept_invitation(membership=invited_again, password="a-thief-chose-this", at=LATER)
    stored = Membership.objects.get(pk=invited_again.pk)
    assert (stored.joined_at, stored.user.check_password(PASSWORD)) == (None, True)


def test_an_invitation_is_taken_up_once(invited):
    accept_invitation(membership=invited, password="three-sound-claws", at=LATER)
    with pytest.raises(InvitationSpent, match="has been used"):
        accept_invitation(membership=invited, password="three-sound-claws", at=LATER)
    assert Membership.objects.get(pk=invited.pk).joined_at == LATER


def test_an_invitation_withdrawn_meanwhile_lets_nobody_in(invited):
    end_membership(membership=invited, at=LATER)
    with pytest.raises(InvitationSpent, match="withdrawn"):
        accept_invitation(membership=invited, password="three-sound-claws", at=LATER)
    stored = Membership.objects.get(pk=invited.pk)
    assert (stored.joined_at, stored.user.has_usable_password()) == (None, False)
