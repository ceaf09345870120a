"""A person leaves a business."""

from datetime import datetime

from django.db import transaction

from trimops.accounts.models import Membership
from trimops.accounts.roles import Role
from trimops.kernel.errors import RuleBroken


class LastOwner(RuleBroken):
    """Somebody must own the business."""

    code = "last_owner"


@transaction.atomic
def end_membership(*, membership: Membership, at: datetime) -> Membership:
    """From now on the person sees nothing of the business. What they did keeps their name."""
    owners = Membership.objects.select_for_update().filter(
        business_id=membership.business_id, role=Role.OWNER, joined_at__isnull=False, ended_at__isnull=True
    )
    if [owner.pk for owner in owners] == [membership.pk]:
        raise LastOwner("The business would be left without an owner: make somebody else owner first.")
    row = Membership.objects.select_for_update().get(pk=membership.pk)
    row.ended_at = row.ended_at or at
    row.save()
    return row
