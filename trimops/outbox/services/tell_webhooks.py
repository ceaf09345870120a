"""Other programs are told of an event, in the transaction that makes it."""

import json
from collections.abc import Callable, Mapping
from datetime import UTC, datetime
from decimal import Decimal
from uuid import NAMESPACE_URL, uuid5

from django.db import transaction

from trimops.kernel.scope import Scope
from trimops.outbox.domain.outgoing_states import Channel, Topic
from trimops.outbox.domain.webhook_events import WebhookEvent
from trimops.outbox.models import Outgoing, WebhookAddress
from trimops.outbox.services.put_out import Message, put_out

Facts = Mapping[str, object]


@transaction.atomic
def tell_webhooks(
    *, business_id: int, event: WebhookEvent, data: Facts | Callable[[], Facts], at: datetime, once: str
) -> list[Outgoing]:
    """One message to each open address that wants `event`. Told twice with the same `once`, it is told once.

    `data`, or what makes it when somebody wants it: keys of rows, names of farms and vans, aware times, money as
    Decimal; no address, number or name of a person. A key "farm" with an "id" lets the message go with its farm when
    that is erased. `once`: at most 80 letters.
    """
    rows = WebhookAddress.objects.within(Scope(business_id)).filter(closed_at__isnull=True)
    wanting = [row for row in rows if event.value in row.events]
    if not wanting:
        return []
    facts = data() if callable(data) else data
    return [
        message
        for row in wanting
        if (message := tell_one(address=row, event=event, data=facts, at=at, once=once)) is not None
    ]


def tell_one(
    *, address: WebhookAddress, event: WebhookEvent, data: Facts, at: datetime, once: str
) -> Outgoing | None:
    """The message to this address; None where it was told before."""
    farm = data.get("farm")
    message = Message(
        channel=Channel.WEBHOOK,
        topic=Topic.EVENT,
        address=address.url,
        subject=event.label,
        body=_body(address.business_id, event, data, at, once),
        once=f"webhook {address.pk} {once}",
        farm_id=int(farm["id"]) if isinstance(farm, Mapping) else None,
    )
    return put_out(business_id=address.business_id, message=message, at=at)


def _body(business_id: int, event: WebhookEvent, data: Facts, at: datetime, once: str) -> str:
    """`id` names the event, the same for every address; the header's id names the message to one."""
    told = {
        "id": str(uuid5(NAMESPACE_URL, f"trimops {business_id} {once}")),
        "type": event.value,
        "timestamp": at,
        "data": data,
    }
    return json.dumps(told, default=_written, ensure_ascii=False, separators=(",", ":"))


def _written(value: object) -> str:
    """Times in UTC (RFC 3339), money as text so that no reader makes a float of it."""
    if isinstance(value, datetime):
        return value.astimezone(UTC).isoformat().replace("+00:00", "Z")
    if isinstance(value, Decimal):
        return str(value)
    raise TypeError(f"{type(value).__name__} is nothing to tell another program.")
