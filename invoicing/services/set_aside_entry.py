"""A booking that pays no invoice is set aside, so that it is not asked about again; and brought back."""

from datetime import datetime

from django.db import transaction

from invoicing.models import BankEntry
from invoicing.services.match_entry import open_entry
from invoicing.services.want_reason import want_reason


@transaction.atomic
def set_aside_entry(*, entry: BankEntry, because: str, at: datetime) -> BankEntry:
    """EntryIsDone when it is matched or set aside already, ReasonMissing without a reason."""
    row = open_entry(entry)
    reason = want_reason(words=because, ask="Say what it is: rent, feed, a private matter.")
    row.set_aside_at, row.set_aside_because = at, reason[:200]
    row.save(update_fields=["set_aside_at", "set_aside_because"])
    return row


@transaction.atomic
def bring_back_entry(*, entry: BankEntry) -> BankEntry:
    """It is asked about again; one that was not set aside stays as it is."""
    row = entry.locked()
    row.set_aside_at, row.set_aside_because = None, ""
    row.save(update_fields=["set_aside_at", "set_aside_because"])
    return row
