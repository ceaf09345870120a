"""A person makes a token for a program."""

from datetime import timedelta

import pytest
from django.core.exceptions import ValidationError

from tests.factories import NOON, make_member
from trimops.accounts.actions import MAY, Action
from trimops.accounts.models import ApiToken
from trimops.accounts.roles import Role
from trimops.accounts.services.end_membership import end_membership
from trimops.accounts.services.make_token import (
    LONGEST,
    MOST_LIVE,
    TokenRefused,
    TokenWish,
    givable,
    make_token,
)

DAY = timedelta(days=1)


def wish(*scopes, name="Farm office", lasts=DAY):
    return TokenWish(name, set(scopes or {Action.SEE_FARMS}), lasts)


def test_a_token_is_made_for_what_the_part_allows_and_ends_by_itself(owner):
    token, text = make_token(membership=owner, wish=wish(Action.SEE_FARMS, Action.KEEP_MONEY), at=NOON)
    kept = ApiToken.objects.get(pk=token.pk)
    assert (kept.user, kept.membership, kept.name) == (owner.user, owner, "Farm office")
    assert kept.actions == {Action.SEE_FARMS, Action.KEEP_MONEY}
    assert text.startswith(kept.token_key)
    assert kept.is_good(NOON + DAY - timedelta(seconds=1))
    assert not kept.is_good(NOON + DAY)


@pytest.mark.parametrize("role", list(Role))
def test_no_part_can_give_more_than_it_has(business, role):
    member = make_member(business, role)
    for action in Action:
        if role in MAY[action].roles:
            assert action in givable(role)
        else:
            with pytest.raises(TokenRefused, match=action.value):
                make_token(membership=member, wish=wish(action), at=NOON)
    assert not ApiToken.objects.exists()


@pytest.mark.parametrize("lasts", [timedelta(), -DAY, LONGEST + timedelta(seconds=1)])
def test_a_token_that_does_not_end_in_time_is_refused(owner, lasts):
    with pytest.raises(TokenRefused, match="ends within"):
        make_token(membership=owner, wish=wish(lasts=lasts), at=NOON)


def test_a_token_for_nothing_or_without_a_name_is_refused(owner):
    with pytest.raises(TokenRefused, match="at least one"):
        make_token(membership=owner, wish=TokenWish("x", set(), DAY), at=NOON)
    with pytest.raises(ValidationError):
        make_token(membership=owner, wish=wish(name="  "), at=NOON)


def test_who_left_makes_none(business, owner):
    gone = end_membership(membership=make_member(business, Role.OFFICE), at=NOON)
    with pytest.raises(TokenRefused, match="in the business"):
        make_token(membership=gone, wish=wish(), at=NOON)


def test_live_tokens_of_one_person_are_limited_and_ended_ones_do_not_count(owner):
    for _ in range(MOST_LIVE):
        make_token(membership=owner, wish=wish(), at=NOON)
    with pytest.raises(TokenRefused, match=str(MOST_LIVE)):
        make_token(membership=owner, wish=wish(), at=NOON)
    make_token(membership=owner, wish=wish(), at=NOON + DAY)
