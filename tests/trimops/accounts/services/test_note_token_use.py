"""When and from where a token was used last."""

from datetime import timedelta

from tests.factories import NOON
from trimops.accounts.actions import Action
from trimops.accounts.models import ApiToken
from trimops.accounts.services.make_token import TokenWish, make_token
from trimops.accounts.services.note_token_use import AT_MOST_EACH, note_token_use

WISH = TokenWish("Farm office", {Action.SEE_FARMS}, timedelta(days=9))


def test_a_use_is_kept_and_the_next_only_after_a_while(owner):
    token, _ = make_token(membership=owner, wish=WISH, at=NOON)
    assert note_token_use(token=token, address="203.0.113.7", at=NOON)
    # One who read the row before: the database decides.
    assert not note_token_use(token=token, address="203.0.113.8", at=NOON + timedelta(minutes=1))
    seen = ApiToken.objects.get()
    assert (seen.last_used_at, seen.last_used_from) == (NOON, "203.0.113.7")
    assert not note_token_use(token=seen, address=None, at=NOON + AT_MOST_EACH - timedelta(seconds=1))
    assert note_token_use(token=seen, address=None, at=NOON + AT_MOST_EACH)
    assert ApiToken.objects.get().last_used_from is None
