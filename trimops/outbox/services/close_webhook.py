"""A web address is told nothing any more."""

from datetime import datetime

from django.db import transaction

from trimops.outbox.models import WebhookAddress


@transaction.atomic
def close_webhook(*, address: WebhookAddress, at: datetime) -> WebhookAddress:
    """Closed, its secret forgotten; what still waits to go there fails with a word. Twice changes nothing."""
    row = address.locked()
    if row.closed_at is None:
        row.closed_at, row.secret = at, "-"  # because: a secret that signs nothing any more need not lie here
        row.save(update_fields=["closed_at", "secret"])
    return row
