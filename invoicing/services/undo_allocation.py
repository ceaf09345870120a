"""One thing that was set against an invoice no longer counts; the row is kept."""

from datetime import datetime

from django.db import transaction

from invoicing.models import Allocation
from invoicing.services.lock_period import refuse_locked
from trimops.kernel.errors import RuleBroken


class ReasonMissing(RuleBroken):
    """What is undone or written off says why."""

    code = "reason_missing"


@transaction.atomic
def undo_allocation(*, allocation: Allocation, because: str, at: datetime) -> None:
    """Mark it undone. The caller holds the lock of the invoice and settles it afterwards; done twice is done once."""
    row = allocation.locked()
    if row.undone_at is not None:
        return
    if not because.strip():
        raise ReasonMissing("Say why this is undone: the reason is kept.")
    refuse_locked(scope=row.scope, day=row.on)
    row.undone_at, row.undone_because = at, because.strip()[:200]
    row.full_clean()
    row.save()
