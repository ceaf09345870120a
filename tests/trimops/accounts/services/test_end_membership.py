"""A person leaves a business."""

from datetime import timedelta

import pytest
from django.test import Client
from django.urls import reverse

from tests.factories import NOON, make_business, make_member
from trimops.accounts.models import Membership
from trimops.accounts.roles import Role
from trimops.accounts.services.end_membership import LastOwner, end_membership


def test_who_left_sees_nothing_of_the_business_any_more(business, owner):
    member = make_member(business, Role.TRIMMER)
    client = Client()
    client.force_login(member.user)
    assert client.get(reverse("home")).status_code == 302
    end_membership(membership=member, at=NOON)
    # Signed out, for it was their only place; and nothing is theirs to see when they sign in again.
    assert client.get(reverse("home")).status_code == 302
    client.force_login(member.user)
    assert client.get(reverse("home")).status_code == 403


def test_leaving_twice_keeps_the_first_day(business, owner):
    member = make_member(business, Role.OFFICE)
    for hours in (1, 2):
        end_membership(membership=member, at=NOON + timedelta(hours=hours))
    assert Membership.objects.get(pk=member.pk).ended_at == NOON + timedelta(hours=1)


def test_the_last_owner_cannot_leave(business, owner):
    make_member(business, Role.TRIMMER)
    with pytest.raises(LastOwner, match="without an owner"):
        end_membership(membership=owner, at=NOON)
    assert Membership.objects.get(pk=owner.pk).is_current


def test_of_two_owners_one_may_leave_and_the_other_then_not(business, owner):
    second = make_member(business, Role.OWNER)
    end_membership(membership=owner, at=NOON)
    with pytest.raises(LastOwner):
        end_membership(membership=second, at=NOON)


def test_an_owner_of_another_business_or_one_only_invited_does_not_count(business, owner):
    make_member(make_business("Fell & Beck"), Role.OWNER)
    invited = make_member(business, Role.OWNER)
    Membership.objects.filter(pk=invited.pk).update(joined_at=None)
    with pytest.raises(LastOwner):
        end_membership(membership=owner, at=NOON)


def test_what_they_did_keeps_their_name(business, owner):
    member = make_member(business, Role.TRIMMER)
    end_membership(membership=member, at=NOON)
    assert Membership.objects.get(pk=member.pk).user.name == member.user.name
