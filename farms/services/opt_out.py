"""A person of a farm wants no more messages about visits, or wants them again."""

from datetime import datetime

from django.db import transaction

from farms.models import Contact


@transaction.atomic
def opt_out(*, contact: Contact, at: datetime) -> Contact:
    """From now on none goes to this person, whatever the business sets. Twice keeps the first moment."""
    row = contact.locked()
    if row.opted_out_at is None:
        row.opted_out_at = at
        row.save(update_fields=["opted_out_at"])
    return row


@transaction.atomic
def opt_in(*, contact: Contact) -> Contact:
    """Only the person can, by the same link."""
    row = contact.locked()
    row.opted_out_at = None
    row.save(update_fields=["opted_out_at"])
    return row
