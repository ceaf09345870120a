"""What the watch has to say when a message of its own is tried again, or never went."""

from datetime import datetime

from trimops.errands.services.enqueue import enqueue
from trimops.jobs import Job
from trimops.kernel.secret_link import hash_of, new_secret
from trimops.outbox.domain.outgoing_states import OutgoingState
from trimops.outbox.models import Outgoing
from visits.selectors.lone_watch.lost_calls import call_of


def renew_call_link(*, outgoing: Outgoing) -> str:
    """A new secret for a call that a person has tried again; the old link ends. Empty where the message has none."""
    call = call_of(outgoing)
    if call is None:
        return ""
    secret = new_secret()
    call.secret_hash = hash_of(secret)
    call.save(update_fields=["secret_hash"])
    return secret


def follow_lost_call(*, outgoing: Outgoing, at: datetime) -> None:
    """A call that nobody can have: the watch is looked at at once, so that the next one need not wait.

    By an errand: the message is locked here, and whoever holds a watch locks its messages after it.
    """
    call = call_of(outgoing)
    if call is not None and not call.is_trimmer and outgoing.state == OutgoingState.FAILED.value:
        enqueue(Job.LOOK_AT_WATCH, outgoing.business_id, watch_id=call.watch_id)
