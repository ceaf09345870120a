"""A person has a mail sent once more that did not go, or of which nobody knows whether it went."""

from datetime import datetime

from django.db import transaction

from invoicing.domain.sending_states import SendingState
from invoicing.models import Sending
from invoicing.services.hand_over_sending import look_for_server_again
from invoicing.services.note_sending import note_sending
from trimops.accounts.models import User
from trimops.jobs import Job, enqueue
from trimops.kernel.errors import RuleBroken


class NotToBeSentAgain(RuleBroken):
    """It went, or it is on its way."""

    code = "not_to_be_sent_again"


@transaction.atomic
def send_again(*, sending: Sending, at: datetime, by: User) -> Sending:
    """The same mail with the same Message-ID, so that a mail program that has it already can know it.

    NotToBeSentAgain when it was handed over or is still waiting.
    """
    row = sending.locked()
    state = SendingState(row.state)
    if state is SendingState.HANDED_OVER:
        raise NotToBeSentAgain("This mail was handed over already: send the invoice anew from its own page.")
    if not state.may_go_again:
        raise NotToBeSentAgain("This mail is on its way already: look again in a moment.")
    row.state, row.tries, row.next_try_at, row.left_at = SendingState.QUEUED.value, 0, None, None
    row.full_clean()
    row.save()
    look_for_server_again()
    note_sending(sending=row, state=SendingState.QUEUED, at=at, words=f"Asked for again by {by}")
    enqueue(Job.SEND_PAPER, sending_id=row.pk)
    return row
