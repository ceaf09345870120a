"""What came of a message is kept, and what need not lie here any longer goes."""

from dataclasses import dataclass
from datetime import datetime

from trimops.errands.load_tasks import load_tasks
from trimops.outbox.domain.outgoing_states import OutgoingState, Topic
from trimops.outbox.domain.retry_pauses import next_try
from trimops.outbox.models import Outgoing
from trimops.outbox.owners import OWNERS
from trimops.outbox.services.note_outgoing import MOST_WORDS, note_outgoing

WORTHLESS = "It came too late to be of use, so it does not go any more."
KEPT = ["state", "last_words", "went_at", "next_try_at", "secret", "may_have_gone"]


@dataclass(frozen=True)
class Outcome:
    """FAILED and not `for_good`: it is tried again while its pauses last. `is_unsure`: they may have it."""

    state: OutgoingState
    words: str
    for_good: bool = False
    is_unsure: bool = False


def end_outgoing(*, row: Outgoing, outcome: Outcome, at: datetime) -> None:
    """Keep it on the locked row `row` and in its log. Its secret is emptied unless it is tried again by itself."""
    state = outcome.state
    row.may_have_gone = row.may_have_gone or outcome.is_unsure
    row.next_try_at = None
    if state is OutgoingState.FAILED and not outcome.for_good:
        row.next_try_at = next_try(max(row.tries, 1), at)
        state = OutgoingState.FAILED if row.next_try_at is None else OutgoingState.WAITING
    row.state, row.last_words = state.value, outcome.words[:MOST_WORDS]
    if state is OutgoingState.WENT:
        row.went_at = at
    if state is not OutgoingState.WAITING:
        row.secret = ""
    row.save(update_fields=KEPT)
    note_outgoing(outgoing=row, state=state, at=at, words=outcome.words)
    if state not in (OutgoingState.WAITING, OutgoingState.WENT) and not row.may_have_gone:
        _tell_owner(row, at)


def _tell_owner(row: Outgoing, at: datetime) -> None:
    load_tasks()
    owner = OWNERS.get(Topic(row.topic))
    if owner is not None:
        owner.never_went(row, at)
