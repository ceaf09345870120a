"""A farm takes its wish to be erased back."""

from datetime import datetime

from django.db import transaction

from farms.models import Erasure
from trimops.kernel.errors import RuleBroken


class ErasureIsDone(RuleBroken):
    """What is erased cannot be brought back."""

    code = "erasure_is_done"


@transaction.atomic
def withdraw_erasure(*, erasure: Erasure, at: datetime) -> Erasure:
    """The wish is no more; withdrawing it twice changes nothing."""
    row = erasure.locked()
    if row.done_at is not None:
        raise ErasureIsDone("This has been carried out: what was erased cannot be brought back.")
    if row.withdrawn_at is None:
        row.withdrawn_at = at
        row.save()
    return row
