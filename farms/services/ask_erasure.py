"""A farm asks that what is known of it be erased."""

from datetime import datetime

from django.db import transaction

from farms.models import Erasure, Farm
from farms.selectors.erasures import open_erasure
from farms.services.refuse_erased import refuse_erased
from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken


class ErasureAskedAlready(RuleBroken):
    """The farm asked before, and the business has not answered yet."""

    code = "erasure_asked_already"


@transaction.atomic
def ask_erasure(*, farm: Farm, note: str, at: datetime, by: User) -> Erasure:
    """Put the wish down. Nothing is erased until the owner of the business carries it out."""
    row = farm.locked()
    refuse_erased(farm=row)
    if open_erasure(row.scope, row) is not None:
        raise ErasureAskedAlready("The farm has asked for this already; the business will answer.")
    wish = Erasure(business_id=row.business_id, farm=row, asked_at=at, asked_by=by, note=note.strip())
    wish.full_clean()
    wish.save()
    return wish
