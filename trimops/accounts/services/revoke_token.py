"""Tokens are revoked: one by its person or the owner, all of a place that ends, all of a person with a new password."""

from datetime import datetime

from django.db import transaction

from trimops.accounts.models import ApiToken, Membership, User


@transaction.atomic
def revoke_token(*, token: ApiToken, at: datetime, by: User) -> ApiToken:
    """From now on it lets nobody in. Revoking it again changes nothing."""
    row: ApiToken = ApiToken.objects.select_for_update(of=("self",)).get(pk=token.pk)
    if row.revoked_at is None:
        row.revoked_at, row.revoked_by = at, by
        row.save(update_fields=["revoked_at", "revoked_by"])
    return row


def revoke_tokens_of(*, membership: Membership, at: datetime, by: User | None = None) -> int:
    """All live ones of that place; how many. Call inside the transaction that ends the place."""
    live = ApiToken.objects.filter(membership=membership, revoked_at__isnull=True)
    return int(live.update(revoked_at=at, revoked_by=by))


@transaction.atomic
def revoke_tokens_of_person(*, user: User, at: datetime) -> int:
    """All live ones of the person, in every business; how many."""
    live = ApiToken.objects.filter(membership__user=user, revoked_at__isnull=True, expiry__gt=at)
    return int(live.update(revoked_at=at, revoked_by=user))
