"""A person who works in a business gets another part."""

import pytest

from tests.factories import NOON, make_member
from trimops.accounts.models import Membership
from trimops.accounts.roles import Role
from trimops.accounts.services.change_role import NoSuchPart, change_role
from trimops.accounts.services.end_membership import LastOwner, end_membership


def part(member):
    return Membership.objects.get(pk=member.pk).role


def test_an_office_person_becomes_owner_and_then_the_first_owner_may_step_back(business, owner):
    second = make_member(business, Role.OFFICE)
    with pytest.raises(LastOwner):
        change_role(membership=owner, role=Role.OFFICE)
    change_role(membership=second, role=Role.OWNER)
    change_role(membership=owner, role=Role.TRIMMER)
    assert (part(owner), part(second)) == (Role.TRIMMER, Role.OWNER)


def test_the_last_owner_may_be_made_owner_again(owner):
    assert change_role(membership=owner, role=Role.OWNER).role == Role.OWNER


def test_nobody_changes_between_the_business_and_a_farm(business, owner):
    staff, client = make_member(business, Role.OFFICE), make_member(business, Role.FARM)
    for member, role in ((staff, Role.FARM), (client, Role.OFFICE)):
        with pytest.raises(NoSuchPart):
            change_role(membership=member, role=role)
    assert (part(staff), part(client)) == (Role.OFFICE, Role.FARM)


def test_who_has_left_gets_no_part(business, owner):
    gone = end_membership(membership=make_member(business, Role.OFFICE), at=NOON)
    with pytest.raises(NoSuchPart):
        change_role(membership=gone, role=Role.OWNER)
