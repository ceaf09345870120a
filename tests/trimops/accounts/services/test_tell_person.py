"""A person is told by mail, through the outbox of a business of theirs."""

from tests.factories import NOON, make_business, make_member, make_user
from trimops.accounts.roles import Role
from trimops.accounts.services.end_membership import end_membership
from trimops.accounts.services.tell_person import tell_person
from trimops.kernel.scope import Scope
from trimops.outbox.models import Outgoing


def test_it_goes_from_the_business_they_have_been_in_longest(business, owner):
    user = make_member(business, Role.OFFICE).user
    make_member(make_business("Fell & Beck"), Role.OFFICE, user)
    row = tell_person(user=user, subject="Something", body="was changed", at=NOON)
    assert row is not None
    assert (row.business_id, row.address, row.subject, row.topic) == (
        business.pk,
        user.email,
        "Something",
        "sign_in",
    )


def test_who_is_in_no_business_any_more_has_no_outbox(business, owner):
    gone = make_member(business, Role.OFFICE)
    end_membership(membership=gone, at=NOON)
    for user in (gone.user, make_user()):
        assert tell_person(user=user, subject="x", body="x", at=NOON) is None
    assert not Outgoing.objects.within(Scope(business.pk)).exists()
