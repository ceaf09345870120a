"""Tokens are revoked."""

from datetime import timedelta

from tests.factories import NOON, make_business, make_member
from trimops.accounts.actions import Action
from trimops.accounts.roles import Role
from trimops.accounts.services.end_membership import end_membership
from trimops.accounts.services.make_token import TokenWish, make_token
from trimops.accounts.services.revoke_token import (
    revoke_token,
    revoke_tokens_of,
    revoke_tokens_of_person,
)

LATER = NOON + timedelta(hours=1)
WISH = TokenWish("Farm office", {Action.SEE_FARMS}, timedelta(days=9))


def test_the_first_who_revokes_a_token_is_the_one_who_did(business, owner):
    member = make_member(business, Role.OFFICE)
    token, _ = make_token(membership=member, wish=WISH, at=NOON)
    revoke_token(token=token, at=NOON, by=owner.user)
    row = revoke_token(token=token, at=LATER, by=member.user)
    assert (row.revoked_at, row.revoked_by) == (NOON, owner.user)
    assert not row.is_good(NOON)


def test_all_tokens_of_a_place_are_revoked_and_no_others(business, owner):
    member = make_member(business, Role.OFFICE)
    gone = [make_token(membership=member, wish=WISH, at=NOON)[0] for _ in range(2)]
    kept, _ = make_token(membership=owner, wish=WISH, at=NOON)
    assert revoke_tokens_of(membership=member, at=NOON) == 2
    for token in (*gone, kept):
        token.refresh_from_db()
    assert [token.is_good(NOON) for token in (*gone, kept)] == [False, False, True]


def test_a_place_that_ends_ends_its_tokens(business, owner):
    member = make_member(business, Role.OFFICE)
    token, _ = make_token(membership=member, wish=WISH, at=NOON)
    end_membership(membership=member, at=LATER)
    token.refresh_from_db()
    assert token.revoked_at == LATER


def test_all_tokens_of_a_person_are_revoked_wherever_they_work_and_those_of_before_keep_their_day(
    business, owner
):
    member = make_member(business, Role.OFFICE)
    elsewhere = make_member(make_business("Fell & Beck"), Role.OFFICE, member.user)
    wishes = [(member, NOON), (elsewhere, NOON), (member, NOON - timedelta(days=30)), (owner, NOON)]
    tokens = [make_token(membership=place, wish=WISH, at=at)[0] for place, at in wishes]
    assert revoke_tokens_of_person(user=member.user, at=LATER) == 2
    for token in tokens:
        token.refresh_from_db()
    assert [token.revoked_at for token in tokens] == [LATER, LATER, None, None]
    assert revoke_tokens_of_person(user=member.user, at=LATER) == 0
