"""The events that another program may be told of."""

from enum import StrEnum


class WebhookEvent(StrEnum):
    """The value is the event's name in the message."""

    VISIT_PLANNED = "visit.planned"
    VISIT_CONFIRMED = "visit.confirmed"
    VISIT_MOVED = "visit.moved"
    VISIT_PUT_OFF = "visit.put_off"
    VISIT_CALLED_OFF = "visit.called_off"
    VISIT_STARTED = "visit.started"
    VISIT_FINISHED = "visit.finished"
    REPORT_ISSUED = "report.issued"
    INVOICE_ISSUED = "invoice.issued"
    INVOICE_PAID = "invoice.paid"
    WATCH_RAISED = "watch.raised"
    TEST = "test"

    @property
    def label(self) -> str:
        return _LABELS[self]


CHOOSABLE = tuple(event for event in WebhookEvent if event is not WebhookEvent.TEST)

_LABELS = {
    WebhookEvent.VISIT_PLANNED: "A visit has an hour",
    WebhookEvent.VISIT_CONFIRMED: "A visit is confirmed",
    WebhookEvent.VISIT_MOVED: "A visit has another hour or van",
    WebhookEvent.VISIT_PUT_OFF: "A visit is put off and has no hour any more",
    WebhookEvent.VISIT_CALLED_OFF: "A visit is called off",
    WebhookEvent.VISIT_STARTED: "A visit has begun",
    WebhookEvent.VISIT_FINISHED: "A visit is finished and signed",
    WebhookEvent.REPORT_ISSUED: "A visit report is issued",
    WebhookEvent.INVOICE_ISSUED: "An invoice or a credit note is issued",
    WebhookEvent.INVOICE_PAID: "An invoice is settled",
    WebhookEvent.WATCH_RAISED: "Nothing was heard of somebody who works alone",
    WebhookEvent.TEST: "A test message",
}
