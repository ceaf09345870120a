"""What waits to go is started; what nobody can tell about is said to be unclear."""

from dataclasses import dataclass
from datetime import datetime, timedelta

from django.db import transaction

from invoicing.domain.sending_states import SendingState
from invoicing.models import Sending
from invoicing.selectors.sending_rows import waiting
from invoicing.services.hand_over_sending import look_for_server_again
from invoicing.services.note_sending import note_sending
from trimops.jobs import Job, enqueue
from trimops.kernel.scope import Scope

GOING_AT_MOST = timedelta(minutes=10)
"""Longer than a try may take: the job is ended by force after half of it."""
BEGUN_IN = timedelta(minutes=2)
"""A job begins sooner than that; if not, it was lost."""

AT_ONCE = 200
"""So that a broker whose workers are away is not filled with the same jobs every five minutes."""

LOST = "The program was stopped while it spoke to the mail server."


@dataclass(frozen=True)
class Swept:
    """How many were started, and how many are unclear from now on."""

    started: int
    unclear: int


def sweep_sendings(*, scope: Scope, at: datetime, all_now: bool = False) -> Swept:
    """Start what is due, once more if need be: a sending goes once however often it is started.

    `all_now`: a person wants everything tried now, also what would wait a while longer.
    """
    if all_now:
        look_for_server_again()
    unclear = [row for row in _gone_quiet(scope, at) if _say_unclear(row, at)]
    rows = waiting(scope).exclude(state=SendingState.GOING).order_by("queued_at", "id")
    due = [row for row in rows if _is_due(row, at, all_now)][:AT_ONCE]
    for row in due:
        _start(row, at)
    return Swept(len(due), len(unclear))


def _gone_quiet(scope: Scope, at: datetime) -> list[Sending]:
    rows = Sending.objects.within(scope).filter(
        state=SendingState.GOING.value, began_at__lt=at - GOING_AT_MOST
    )
    return list(rows.defer("attachment", "body"))


def _is_due(row: Sending, at: datetime, all_now: bool) -> bool:
    if all_now:
        return True
    if row.next_try_at is not None:
        return row.next_try_at <= at
    return row.queued_at <= at - BEGUN_IN


@transaction.atomic
def _say_unclear(sending: Sending, at: datetime) -> bool:
    row = sending.locked()
    if row.state != SendingState.GOING or row.began_at is None or row.began_at >= at - GOING_AT_MOST:
        return False
    row.state, row.last_words = SendingState.UNCLEAR.value, LOST
    row.full_clean()
    row.save()
    note_sending(sending=row, state=SendingState.UNCLEAR, at=at, words=LOST)
    return True


@transaction.atomic
def _start(sending: Sending, at: datetime) -> None:
    row = sending.locked()
    if row.next_try_at is not None and row.next_try_at > at:
        row.next_try_at = at
        row.save(update_fields=["next_try_at"])
    enqueue(Job.SEND_PAPER, sending_id=row.pk)
