from trimops.outbox.models.outgoing import Outgoing, OutgoingEvent, OutgoingPart
from trimops.outbox.models.webhook import WebhookAddress

__all__ = ["Outgoing", "OutgoingEvent", "OutgoingPart", "WebhookAddress"]
