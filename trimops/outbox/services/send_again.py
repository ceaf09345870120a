"""A person has a message tried once more that did not go, came too late or was left."""

from datetime import datetime

from django.db import transaction

from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken
from trimops.outbox.domain.outgoing_states import Channel, OutgoingState, Topic
from trimops.outbox.models import Outgoing
from trimops.outbox.owners import OWNERS
from trimops.outbox.selectors.outgoing_rows import why_not_again
from trimops.outbox.services.note_outgoing import note_outgoing
from trimops.outbox.services.send_outgoing import look_again
from trimops.outbox.services.start_sending import start_sending


class NotToBeSentAgain(RuleBroken):
    """It went, or it is on its way."""

    code = "not_to_be_sent_again"


class TextIsGone(RuleBroken):
    """What it said, or the link it carried, is not kept any more."""

    code = "text_is_gone"


@transaction.atomic
def send_again(*, outgoing: Outgoing, at: datetime, by: User) -> Outgoing:
    """The same message with the same key, so that a program that has it already can know it. Its link is a new one.

    NotToBeSentAgain when it went or still waits; TextIsGone.
    """
    row = outgoing.locked()
    state = OutgoingState(row.state)
    if state is OutgoingState.WENT:
        raise NotToBeSentAgain("This went already: what it was about is sent anew from its own page.")
    if not state.may_go_again:
        raise NotToBeSentAgain("This is on its way already: look again in a moment.")
    row.secret = _new_secret(row, at)
    row.state, row.tries, row.next_try_at = OutgoingState.WAITING.value, 0, None
    row.not_before = row.worthless_after = None
    row.save()
    look_again(Channel(row.channel))
    note_outgoing(outgoing=row, state=OutgoingState.WAITING, at=at, words=f"Asked for again by {by}")
    start_sending(row=row, at=at)
    return row


def _new_secret(row: Outgoing, at: datetime) -> str:
    if because := why_not_again(row):
        raise TextIsGone(because)
    owner = OWNERS.get(Topic(row.topic))
    return owner.renew(row, at) if owner is not None else ""
