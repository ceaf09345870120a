"""Other programs are told what became of a visit."""

from datetime import datetime

from trimops.outbox.domain.webhook_events import WebhookEvent
from trimops.outbox.services.tell_webhooks import tell_webhooks
from visits.domain.visit_states import VisitState
from visits.models import Visit

_BY_STATE = {
    VisitState.WANTED: WebhookEvent.VISIT_PUT_OFF,
    VisitState.PLANNED: WebhookEvent.VISIT_PLANNED,
    VisitState.CONFIRMED: WebhookEvent.VISIT_CONFIRMED,
    VisitState.UNDER_WAY: WebhookEvent.VISIT_STARTED,
    VisitState.FINISHED: WebhookEvent.VISIT_FINISHED,
    VisitState.CALLED_OFF: WebhookEvent.VISIT_CALLED_OFF,
}


def tell_visit_event(*, visit: Visit, before: str, at: datetime) -> None:
    """Call when its state, hour or van is another. With the state as it was (`before`), it was moved."""
    event = _BY_STATE[visit.visit_state]
    if before == visit.state and visit.visit_state in (VisitState.PLANNED, VisitState.CONFIRMED):
        event = WebhookEvent.VISIT_MOVED
    tell_webhooks(
        business_id=visit.business_id,
        event=event,
        data=lambda: _told(visit),
        at=at,
        once=f"{event} {visit.pk} {at.timestamp():.6f}",
    )


def _told(visit: Visit) -> dict[str, object]:
    return {
        "visit": visit.pk,
        "state": visit.state,
        "reason": visit.reason,
        "starts": visit.planned_start,
        "ends": visit.planned_finish,
        "cows": visit.head_count,
        "van": {"id": visit.van.pk, "name": visit.van.name} if visit.van else None,
        "farm": {"id": visit.farm_id, "name": visit.farm.name},
    }
