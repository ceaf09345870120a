"""Somebody of a farm sees it no more."""

from datetime import datetime

from django.db import transaction

from farms.models import FarmAccess
from trimops.accounts.services.end_membership import end_membership
from trimops.kernel.scope import Scope


@transaction.atomic
def close_farm_access(*, access: FarmAccess, at: datetime) -> None:
    """From now on the person does not see this farm; with no farm left they leave the business as well."""
    row = access.locked()
    membership = row.membership
    row.delete()
    if not FarmAccess.objects.within(Scope(membership.business_id)).filter(membership=membership).exists():
        end_membership(membership=membership, at=at)
