"""The background jobs of what leaves the house."""

from django.utils import timezone

from trimops.errands.does import does
from trimops.jobs import Job
from trimops.outbox.services.send_outgoing import send_outgoing


@does(Job.SEND_OUTGOING, seconds=240)
def send_outgoing_task(outgoing_id: int) -> None:
    send_outgoing(outgoing_id=outgoing_id, clock=timezone.now)


@does(Job.SEND_ALARM, seconds=240)
def send_alarm_task(outgoing_id: int) -> None:
    """The same, for the watch over who works alone."""
    send_outgoing(outgoing_id=outgoing_id, clock=timezone.now)
