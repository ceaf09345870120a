"""One line more in the log of a sending."""

from datetime import datetime

from invoicing.domain.sending_states import SendingState
from invoicing.models import Sending, SendingEvent

MOST_WORDS = 500


def note_sending(*, sending: Sending, state: SendingState, at: datetime, words: str = "") -> SendingEvent:
    """Keep that the sending came to `state`, with what the mail server or a person said (cut to 500 letters)."""
    event = SendingEvent(business_id=sending.business_id, sending=sending, at=at, state=state.value)
    event.words = words[:MOST_WORDS]
    event.full_clean()
    event.save()
    return event
