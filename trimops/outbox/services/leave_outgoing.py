"""A person says that a message need not go any more."""

from datetime import datetime

from django.db import transaction

from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken
from trimops.outbox.domain.outgoing_states import OutgoingState
from trimops.outbox.models import Outgoing
from trimops.outbox.services.end_outgoing import Outcome, end_outgoing


class WentAlready(RuleBroken):
    """What went, or goes at this moment, cannot be called back."""

    code = "went_already"


@transaction.atomic
def leave_outgoing(*, outgoing: Outgoing, at: datetime, by: User) -> Outgoing:
    """It is tried no more and nobody is told of it any more; its log stays. WentAlready."""
    row = outgoing.locked()
    if row.state in (OutgoingState.WENT, OutgoingState.GOING):
        raise WentAlready("This went, or goes at this moment: it cannot be called back.")
    if row.state != OutgoingState.LEFT:
        said = row.last_words
        end_outgoing(row=row, outcome=Outcome(OutgoingState.LEFT, f"Left by {by}: it need not go"), at=at)
        row.last_words = said
        row.save(update_fields=["last_words"])
    return row
