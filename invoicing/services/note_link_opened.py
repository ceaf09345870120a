"""A link to an invoice was opened."""

from datetime import datetime, timedelta

from django.db import transaction

from invoicing.models import InvoiceLink

AGAIN_AFTER = timedelta(minutes=10)
"""Who looks at the page and takes the PDF has opened the link once."""


@transaction.atomic
def note_link_opened(*, link: InvoiceLink, at: datetime) -> bool:
    """Keep when it was last opened; False where that was a moment ago, or the link is over."""
    row = link.locked()
    if not row.is_alive(at) or (row.opened_at is not None and at - row.opened_at < AGAIN_AFTER):
        return False
    row.opened_at = at
    row.save()
    return True
