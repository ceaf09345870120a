"""A person makes a token for a program."""

from collections.abc import Set
from dataclasses import dataclass
from datetime import datetime, timedelta

from django.db import transaction
from knox.models import get_digest_token
from knox.settings import CONSTANTS

from trimops.accounts.actions import MAY, Action
from trimops.accounts.models import ApiToken, Membership
from trimops.accounts.roles import Role
from trimops.kernel.errors import RuleBroken

LONGEST = timedelta(days=730)
MOST_LIVE = 20


class TokenRefused(RuleBroken):
    """What is asked of the token cannot be given."""

    code = "token_refused"


@dataclass(frozen=True)
class TokenWish:
    """What the token is for; `farm_key` is the farm that a farm client's program may see."""

    name: str
    scopes: Set[Action]
    lasts: timedelta
    farm_key: int | None = None


@transaction.atomic
def make_token(*, membership: Membership, wish: TokenWish, at: datetime) -> tuple[ApiToken, str]:
    """The token kept, and its text, which is known now and never again.

    TokenRefused for a scope that the person's part does not allow, no scope, too long a life, or more than `MOST_LIVE`
    live ones. ValidationError names what else to mend.
    """
    owner = Membership.objects.select_for_update().select_related("user").get(pk=membership.pk)
    _require_fair(owner, wish)
    live = ApiToken.objects.filter(membership=owner, revoked_at__isnull=True, expiry__gt=at)
    if live.count() >= MOST_LIVE:
        raise TokenRefused(f"There are {MOST_LIVE} live tokens of yours already: revoke one first.")
    digest, text = get_digest_token()
    token = ApiToken(
        digest=digest,
        token_key=text[: CONSTANTS.TOKEN_KEY_LENGTH],
        user=owner.user,
        membership=owner,
        name=wish.name.strip(),
        scopes=sorted(action.value for action in wish.scopes),
        farm_key=wish.farm_key,
        expiry=at + wish.lasts,
    )
    token.full_clean()
    token.save(force_insert=True)
    return token, text


def _require_fair(owner: Membership, wish: TokenWish) -> None:
    if not owner.is_current:
        raise TokenRefused("Only who is in the business has programs at it.")
    if not wish.scopes:
        raise TokenRefused("Choose at least one thing that the program may do.")
    if not timedelta() < wish.lasts <= LONGEST:
        raise TokenRefused(f"A token ends within {LONGEST.days} days.")
    over = wish.scopes - givable(Role(owner.role))
    if over:
        raise TokenRefused(f"Your part in the business does not allow: {', '.join(sorted(over))}.")


def givable(role: Role) -> frozenset[Action]:
    """What a person of that part can give a program."""
    return frozenset(action for action in Action if role in MAY[action].roles)
