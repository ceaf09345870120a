"""One thing that was set against an invoice no longer counts; the row is kept."""

from datetime import datetime

from django.db import transaction

from invoicing.models import Allocation
from invoicing.services.lock_period import refuse_locked
from invoicing.services.want_reason import want_reason


@transaction.atomic
def undo_allocation(*, allocation: Allocation, because: str, at: datetime) -> None:
    """Mark it undone. The caller holds the lock of the invoice and settles it afterwards; done twice is done once."""
    row = allocation.locked()
    if row.undone_at is not None:
        return
    reason = want_reason(words=because, ask="Say why this is undone: the reason is kept.")
    refuse_locked(scope=row.scope, day=row.on)
    row.undone_at, row.undone_because = at, reason[:200]
    row.full_clean()
    row.save()
