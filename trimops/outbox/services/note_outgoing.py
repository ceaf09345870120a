"""One line more in the log of a message."""

from datetime import datetime

from trimops.outbox.domain.outgoing_states import OutgoingState
from trimops.outbox.models import Outgoing, OutgoingEvent

MOST_WORDS = 500


def note_outgoing(
    *, outgoing: Outgoing, state: OutgoingState, at: datetime, words: str = ""
) -> OutgoingEvent:
    """Keep that it came to `state`, with what the other side or a person said (cut to 500 letters)."""
    event = OutgoingEvent(business_id=outgoing.business_id, outgoing=outgoing, at=at, state=state.value)
    event.words = words[:MOST_WORDS]
    event.full_clean()
    event.save()
    return event
