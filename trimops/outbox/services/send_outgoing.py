"""A message is tried once; what came of it is kept, whatever it was."""

import logging
from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime, timedelta

from django.core.cache import cache
from django.db import transaction

from trimops.errands.kinds import TryLater
from trimops.errands.only_one import only_one
from trimops.outbox.domain.outgoing_states import Channel, OutgoingState
from trimops.outbox.domain.retry_pauses import next_try
from trimops.outbox.models import Outgoing
from trimops.outbox.selectors.make_ready import make_ready
from trimops.outbox.senders.ready import Away, NotTaken, Ready, Refused, Unsure
from trimops.outbox.senders.senders import SENDERS
from trimops.outbox.services.end_outgoing import WORTHLESS, Outcome, end_outgoing
from trimops.outbox.services.note_outgoing import note_outgoing
from trimops.tenancy.unscoped import unscoped

log = logging.getLogger(__name__)

AWAY_SECONDS = 60
BUSY = timedelta(seconds=5)
OPEN = (OutgoingState.WAITING.value, OutgoingState.GOING.value)
STOPPED = (
    "The program was stopped while it handed this over: they may have it. It goes again with the same number."
)


@dataclass(frozen=True)
class _Begun:
    """A try that is ours alone."""

    row: Outgoing
    ready: Ready


def send_outgoing(*, outgoing_id: int, clock: Callable[[], datetime]) -> OutgoingState | None:
    """Hand it over if it is due; where it stands then, None where there is nothing to do. TryLater: not yet, or again.

    It goes at least once. That it is going is committed before the other side is spoken to, and whoever speaks holds a
    lock that dies with its process; so a message that is found going, and free, may have gone. It goes again, with the
    same key, by which the other side can tell.

    After a server that could not be reached at all, messages of that way wait a minute where they are: a run of a
    hundred invoices finds out once that it is away, not a hundred times. `clock` is read when it begins and when it
    ends, since a slow server may take minutes.
    """
    with only_one(f"outgoing {outgoing_id}") as is_mine:
        if not is_mine:
            raise TryLater(clock() + BUSY, "Somebody is at it.")
        begun = _begin(outgoing_id, clock())
        if isinstance(begun, datetime):
            raise TryLater(begun)
        if begun is None:
            return None
        outcome = _hand_over(begun.ready)
        row = _end(begun.row, outcome, clock())
    if row.state == OutgoingState.WAITING and row.next_try_at is not None:
        # because: what was said may name a person, and stands with the message alone
        raise TryLater(_next_look(row, row.next_try_at), "It did not go yet.")
    return OutgoingState(row.state)


def is_away(channel: Channel) -> bool:
    """Whether nobody could be reached by that way within the last minute."""
    try:
        return bool(cache.get(_mark(channel)))
    except Exception:  # because: where the note cannot be read it is tried, and that tells
        log.warning("not known whether %s is away", channel, exc_info=True)
        return False


def _note_away(channel: Channel) -> None:
    try:
        cache.set(_mark(channel), True, AWAY_SECONDS)
    except Exception:  # because: what came of the message is known, and must not be lost over the note
        log.warning("not noted that %s is away", channel, exc_info=True)


def look_again(*channels: Channel) -> None:
    """A person wants it tried now."""
    cache.delete_many([_mark(channel) for channel in channels or Channel])


@transaction.atomic(durable=True)
def _begin(outgoing_id: int, at: datetime) -> _Begun | datetime | None:
    with unscoped("a job is handed one row"):
        found = Outgoing.objects.filter(pk=outgoing_id).first()
    row = found and _still_there(found)
    if row is None or row.state not in OPEN:
        return None
    if row.state == OutgoingState.GOING:
        _take_back(row, at)
    if row.worthless_after is not None and row.worthless_after <= at:
        end_outgoing(row=row, outcome=Outcome(OutgoingState.LAPSED, WORTHLESS), at=at)
        return None
    if row.may_have_gone and row.tries and next_try(row.tries, at) is None:
        # because: what stops the program each time must not do so for ever
        end_outgoing(row=row, outcome=Outcome(OutgoingState.FAILED, row.last_words), at=at)
        return None
    waits_until = _waits_until(row, at)
    return waits_until or _mark_going(row, at)


def _take_back(row: Outgoing, at: datetime) -> None:
    """Whoever had it is gone, or its lock would not be ours."""
    row.state, row.may_have_gone, row.last_words = OutgoingState.WAITING.value, True, STOPPED
    row.save(update_fields=["state", "may_have_gone", "last_words"])
    note_outgoing(outgoing=row, state=OutgoingState.WAITING, at=at, words=STOPPED)


def _waits_until(row: Outgoing, at: datetime) -> datetime | None:
    """When to look at it again; None: it may go now."""
    wanted = max((moment for moment in (row.not_before, row.next_try_at) if moment is not None), default=at)
    if wanted > at:
        return _next_look(row, wanted)
    return at + timedelta(seconds=AWAY_SECONDS) if is_away(Channel(row.channel)) else None


def _next_look(row: Outgoing, wanted: datetime) -> datetime:
    """Not later than it lapses, so that its secret lies no longer than it is of use."""
    return min(wanted, row.worthless_after) if row.worthless_after is not None else wanted


def _mark_going(row: Outgoing, at: datetime) -> _Begun:
    row.state, row.began_at, row.tries, row.next_try_at = OutgoingState.GOING.value, at, row.tries + 1, None
    row.save(update_fields=["state", "began_at", "tries", "next_try_at"])
    note_outgoing(outgoing=row, state=OutgoingState.GOING, at=at, words=f"Try {row.tries}")
    return _Begun(row, make_ready(row, at))


def _hand_over(ready: Ready) -> Outcome:
    try:
        return Outcome(OutgoingState.WENT, SENDERS[ready.channel](ready))
    except NotTaken as fault:
        if isinstance(fault, Away):
            _note_away(ready.channel)
        for_good = isinstance(fault, Refused) and fault.for_good
        return Outcome(
            OutgoingState.FAILED, str(fault), for_good=for_good, is_unsure=isinstance(fault, Unsure)
        )
    except Exception as fault:  # because: a sender that has a fault must not leave a message going for ever
        log.exception("no sender's answer: %s", ready.key)
        return Outcome(OutgoingState.FAILED, f"{type(fault).__name__}: {fault}", is_unsure=True)


@transaction.atomic(durable=True)
def _end(begun: Outgoing, outcome: Outcome, at: datetime) -> Outgoing:
    row = _still_there(begun)
    if row is None:  # because: its farm was erased while it was on its way
        begun.state = outcome.state.value
        return begun
    if row.state not in OPEN and outcome.state is not OutgoingState.WENT:
        # because: our lock went with a broken line to the database; somebody else tried meanwhile, and theirs counts
        return row
    end_outgoing(row=row, outcome=outcome, at=at)
    return row


def _still_there(row: Outgoing) -> Outgoing | None:
    try:
        return row.locked()
    except Outgoing.DoesNotExist:
        return None


def _mark(channel: Channel) -> str:
    return f"{channel}_is_away"
