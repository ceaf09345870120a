"""A test message to another program, so that its owner sees that it arrives and is signed."""

from datetime import datetime
from uuid import uuid4

from django.db import transaction

from trimops.kernel.errors import RuleBroken
from trimops.outbox.domain.webhook_events import WebhookEvent
from trimops.outbox.models import Outgoing, WebhookAddress
from trimops.outbox.services.tell_webhooks import tell_one


class WebhookClosed(RuleBroken):
    """It is told nothing any more."""

    code = "webhook_closed"


@transaction.atomic
def try_webhook(*, address: WebhookAddress, at: datetime) -> Outgoing | None:
    """One message of the type "test", whatever the address wants to hear. WebhookClosed."""
    row = address.locked()
    if row.closed_at is not None:
        raise WebhookClosed("This address is closed: nothing is told to it any more.")
    told = {"words": f"A test message to {row.name}."}
    return tell_one(address=row, event=WebhookEvent.TEST, data=told, at=at, once=f"test {uuid4()}")
