"""Other programs are told that a paper was issued or is settled."""

from datetime import datetime

from invoicing.models import Invoice
from trimops.outbox.domain.webhook_events import WebhookEvent
from trimops.outbox.services.tell_webhooks import tell_webhooks


def tell_money_news(*, invoice: Invoice, event: WebhookEvent, at: datetime, once: str) -> None:
    """Its number, days and sums; nothing of who pays it."""
    tell_webhooks(business_id=invoice.business_id, event=event, data=lambda: _told(invoice), at=at, once=once)


def _told(invoice: Invoice) -> dict[str, object]:
    return {
        "invoice": invoice.pk,
        "kind": invoice.kind,
        "number": invoice.number,
        "issued_on": str(invoice.issued_on),
        "due_on": str(invoice.due_on),
        "currency": invoice.currency,
        "net": invoice.net,
        "tax": invoice.tax,
        "payable": invoice.payable,
        "settled": invoice.settled,
        "visit": invoice.visit_id,
        "farm": {"id": invoice.farm_id, "name": invoice.farm.name},
    }
