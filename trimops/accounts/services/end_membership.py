"""A person leaves a business."""

from datetime import datetime

from django.db import transaction

from trimops.accounts.models import Membership
from trimops.accounts.roles import Role
from trimops.accounts.services.end_sessions import end_sessions
from trimops.accounts.services.revoke_token import revoke_tokens_of
from trimops.kernel.errors import RuleBroken


class LastOwner(RuleBroken):
    """Somebody must own the business."""

    code = "last_owner"


@transaction.atomic
def end_membership(*, membership: Membership, at: datetime) -> Membership:
    """From now on the person and their programs see nothing of the business. What they did keeps their name.

    Who has no place anywhere any more is signed out wherever they are signed in.
    """
    require_other_owner(membership)
    row = Membership.objects.select_for_update().select_related("user").get(pk=membership.pk)
    row.ended_at = row.ended_at or at
    row.save()
    revoke_tokens_of(membership=row, at=at)
    left = Membership.objects.filter(user=row.user, joined_at__isnull=False, ended_at__isnull=True)
    if row.joined_at is not None and not left.exists():
        end_sessions(user=row.user)
    return row


def require_other_owner(membership: Membership) -> None:
    """LastOwner where this is the only one; locks the owners. Call inside the transaction that changes it."""
    owners = Membership.objects.select_for_update().filter(
        business_id=membership.business_id, role=Role.OWNER, joined_at__isnull=False, ended_at__isnull=True
    )
    # because: two who lock the same rows in different orders wait for each other
    owners = owners.order_by("pk")
    if [owner.pk for owner in owners] == [membership.pk]:
        raise LastOwner("The business would be left without an owner: make somebody else owner first.")
