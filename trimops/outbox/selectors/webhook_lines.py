"""The web addresses that are told of events, each with what became of the newest message to it."""

from collections.abc import Sequence
from dataclasses import dataclass

from trimops.kernel.scope import Scope
from trimops.outbox.domain.outgoing_states import Channel, OutgoingState
from trimops.outbox.domain.webhook_events import CHOOSABLE, WebhookEvent
from trimops.outbox.models import Outgoing, WebhookAddress


@dataclass(frozen=True)
class WebhookLine:
    """`newest`: of the messages to it; None: none was written yet."""

    address: WebhookAddress
    events: Sequence[WebhookEvent]
    newest: Outgoing | None

    @property
    def is_told_all(self) -> bool:
        """Whether it wants everything that there is."""
        return set(self.events) >= set(CHOOSABLE)

    @property
    def state(self) -> OutgoingState | None:
        return OutgoingState(self.newest.state) if self.newest else None


def webhook_lines(scope: Scope) -> list[WebhookLine]:
    """The open ones by name. Two queries."""
    rows = list(WebhookAddress.objects.within(scope).filter(closed_at__isnull=True))
    sent = Outgoing.objects.within(scope).filter(
        channel=Channel.WEBHOOK.value, address__in=[row.url for row in rows]
    )
    # Of the newest few: what became of the last one is what a person wants to know, not all that went.
    newest: dict[str, Outgoing] = {}
    for message in sent.defer("body")[:200]:
        newest.setdefault(message.address, message)
    known = {event.value: event for event in WebhookEvent}
    return [
        WebhookLine(row, [known[name] for name in row.events if name in known], newest.get(row.url))
        for row in rows
    ]
