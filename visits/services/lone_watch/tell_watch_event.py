"""Other programs are told that nothing was heard of somebody who works alone."""

from datetime import datetime

from trimops.outbox.domain.webhook_events import WebhookEvent
from trimops.outbox.services.tell_webhooks import tell_webhooks
from visits.models import LoneWatch


def tell_watch_event(*, watch: LoneWatch, at: datetime) -> None:
    """When the first on the list is told; nothing of who it is. A watch that is only tried out is no event."""
    if watch.is_test:
        return
    tell_webhooks(
        business_id=watch.business_id,
        event=WebhookEvent.WATCH_RAISED,
        data=lambda: _told(watch),
        at=at,
        once=f"watch {watch.pk} {at.timestamp():.6f}",
    )


def _told(watch: LoneWatch) -> dict[str, object]:
    told: dict[str, object] = {"watch": watch.pk, "visit": watch.visit_id, "began": watch.began_at}
    if watch.visit is not None:
        told["farm"] = {"id": watch.visit.farm_id, "name": watch.visit.farm.name}
    return told
