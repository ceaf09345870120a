"""A person says that a mail need not go any more."""

from datetime import datetime

from django.db import transaction

from invoicing.domain.sending_states import SendingState
from invoicing.models import Sending
from invoicing.services.note_sending import note_sending
from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken


class WentAlready(RuleBroken):
    """What went, or goes at this moment, cannot be called back."""

    code = "went_already"


@transaction.atomic
def leave_sending(*, sending: Sending, at: datetime, by: User) -> Sending:
    """It is tried no more and nobody is told of it any more; its log stays. WentAlready."""
    row = sending.locked()
    if row.state in (SendingState.HANDED_OVER, SendingState.GOING):
        raise WentAlready("This mail went, or goes at this moment: it cannot be called back.")
    if row.left_at is not None:
        return row
    if row.state == SendingState.QUEUED:
        row.state = SendingState.FAILED.value
    row.left_at, row.next_try_at = at, None
    row.full_clean()
    row.save()
    note_sending(sending=row, state=SendingState(row.state), at=at, words=f"Left by {by}: it need not go")
    return row
