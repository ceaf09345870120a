"""Another program's web address is put on the list of those told of events."""

import secrets
from collections.abc import Collection
from dataclasses import dataclass
from datetime import datetime

from django.db import transaction

from trimops.accounts.models import Business, User
from trimops.kernel.errors import FieldRefused
from trimops.outbox.domain.webhook_events import CHOOSABLE, WebhookEvent
from trimops.outbox.domain.webhook_signature import SECRET_BYTES, written_secret
from trimops.outbox.models import WebhookAddress
from trimops.outside.no_answer import NoAnswer
from trimops.outside.our_guard import our_guard

MOST_ADDRESSES = 10


class WebhookRefused(FieldRefused):
    """Nothing can be told to it as it is written."""

    code = "webhook_refused"


@dataclass(frozen=True)
class WebhookWish:
    name: str
    url: str
    events: Collection[WebhookEvent]


@transaction.atomic
def add_webhook(*, business: Business, wish: WebhookWish, at: datetime, by: User) -> WebhookAddress:
    """The row, with a new secret. WebhookRefused: no address to ask, none chosen, on the list already, or too many."""
    business_row = Business.objects.select_for_update().get(pk=business.pk)
    row = WebhookAddress(business=business_row, name=wish.name, url=wish.url.strip(), made_at=at, made_by=by)
    row.events = [event.value for event in CHOOSABLE if event in wish.events]
    _refuse(row)
    row.secret = written_secret(secrets.token_bytes(SECRET_BYTES))
    row.full_clean()
    row.save()
    return row


def _refuse(row: WebhookAddress) -> None:
    try:
        our_guard().target(row.url)
    except NoAnswer as no:
        raise WebhookRefused("url", f"Nothing can be told there: {no}.") from None
    if not row.events:
        raise WebhookRefused("events", "Choose what it is told of.")
    others = WebhookAddress.objects.within(row.scope).filter(closed_at__isnull=True)
    if others.filter(url=row.url).exists():
        raise WebhookRefused("url", "This address is on the list already: close that one first.")
    if others.count() >= MOST_ADDRESSES:
        raise WebhookRefused("url", f"There are {MOST_ADDRESSES} addresses already: close one first.")
