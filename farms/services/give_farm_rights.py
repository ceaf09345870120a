"""What a person of a farm may do there."""

from collections.abc import Collection

from django.db import transaction

from farms.models import FarmAccess
from trimops.accounts.roles import FarmRight


@transaction.atomic
def give_farm_rights(*, access: FarmAccess, rights: Collection[FarmRight]) -> FarmAccess:
    """These rights and no others, from the person's next page on."""
    row = access.locked()
    for right in FarmRight:
        setattr(row, right.value, right in rights)
    row.full_clean()
    row.save()
    return row
