"""The tokens of programs, for the person's own list and for the owner's."""

from dataclasses import dataclass
from datetime import datetime

from django.db.models import QuerySet

from trimops.accounts.models import ApiToken, Business, Membership, User


@dataclass(frozen=True)
class TokenLine:
    """One token as a list shows it; `word` says what has become of it."""

    token: ApiToken
    is_good: bool
    word: str


def tokens_of(membership: Membership, at: datetime) -> list[TokenLine]:
    """The person's own in this business, newest first, ended ones too."""
    return _lines(ApiToken.objects.filter(membership=membership).select_related("user"), at)


def tokens_at(business: Business, at: datetime) -> list[TokenLine]:
    """Everybody's in the business, newest first."""
    return _lines(ApiToken.objects.filter(membership__business=business).select_related("user"), at)


def live_tokens(user: User, at: datetime) -> int:
    """How many let a program in as that person, in all their businesses."""
    live = ApiToken.objects.filter(membership__user=user, revoked_at__isnull=True, expiry__gt=at)
    return live.filter(membership__ended_at__isnull=True).count()


def _lines(rows: QuerySet[ApiToken], at: datetime) -> list[TokenLine]:
    return [TokenLine(row, row.is_good(at), _word(row, at)) for row in rows.order_by("-created", "-pk")]


def _word(token: ApiToken, at: datetime) -> str:
    if token.revoked_at is not None:
        return "Revoked"
    if token.expiry <= at:
        return "Ended"
    return "Good" if token.is_good(at) else "Its person left"
