"""The office closes a link to an invoice."""

from datetime import datetime

from django.db import transaction

from invoicing.models import InvoiceLink


@transaction.atomic
def close_invoice_link(*, link: InvoiceLink, at: datetime) -> InvoiceLink:
    """From now on it answers 404; closing it twice changes nothing."""
    row = link.locked()
    if row.closed_at is None:
        row.closed_at = at
        row.save()
    return row
