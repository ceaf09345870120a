"""An errand is done, and what came of it is kept."""

import logging
import random
import time
from collections.abc import Callable
from contextlib import nullcontext
from dataclasses import dataclass
from datetime import datetime, timedelta

from django.db import Error, connection, transaction
from django.utils import timezone

from trimops.errands.domain.errand_states import ErrandState
from trimops.errands.domain.pauses import MOST_TRIES, pause_after
from trimops.errands.kinds import KINDS, ErrandKind, Gone, TryLater
from trimops.errands.load_tasks import load_tasks
from trimops.errands.models import Errand
from trimops.errands.only_one import only_one
from trimops.jobs import Job
from trimops.kernel.errors import RuleBroken
from trimops.tenancy.unscoped import unscoped
from trimops.watch.doing import Doing, done_by
from trimops.watch.job_lines import job_logged

log = logging.getLogger(__name__)

OPEN = (ErrandState.WAITING.value, ErrandState.UNDER_WAY.value)
BUSY_SECONDS = 3
"""Until an errand looks again whether the one that it must not meet is over."""
ON_COMMIT_GRACE = timedelta(seconds=1)
DIED = "It was tried often enough; the last time its process was ended while at it (memory, time or a kill)."
END_PAUSES = (0.2, 1.0, 3.0)
"""What was done and cannot be noted is done again, so noting it is tried some times."""


@dataclass(frozen=True)
class _Outcome:
    state: ErrandState
    words: str = ""
    again_at: datetime | None = None
    is_try: bool = True
    is_fault: bool = False


def run_errand(*, errand_id: int, clock: Callable[[], datetime] = timezone.now) -> ErrandState | None:
    """Do it now if it is due and nobody is at it; the state it is left in, None where it was not for us.

    Whoever is at it holds a lock that dies with its process. So an errand that is under way and free was left by
    somebody who was killed, and is done anew, but not more often than it would be tried. Nothing of what the work
    raises is raised here.
    """
    with only_one(f"errand {errand_id}") as is_mine:
        if not is_mine:
            return None
        errand = _begin(errand_id, clock())
        if errand is None:
            return None
        if errand.tries > MOST_TRIES:
            log.error("given up: %s %s: %s", errand.job, errand.ids, DIED)
            outcome = _Outcome(ErrandState.STUCK, DIED, is_try=False, is_fault=True)
        else:
            outcome = _do(errand, clock)
        return _noted(errand, outcome, clock)


@transaction.atomic(durable=True)
def _begin(errand_id: int, at: datetime) -> Errand | None:
    with unscoped("an errand is handed out by its number"):
        errand = Errand.objects.locked().filter(pk=errand_id, state__in=OPEN).first()
    # because: the database's clock set what is due at once, and this one may run a moment behind it
    if errand is None or errand.due_at > at + ON_COMMIT_GRACE:
        return None
    errand.state, errand.began_at, errand.tries = ErrandState.UNDER_WAY.value, at, errand.tries + 1
    errand.save(update_fields=["state", "began_at", "tries"])
    return errand


def _do(errand: Errand, clock: Callable[[], datetime]) -> _Outcome:
    load_tasks()
    try:
        kind = KINDS[Job(errand.job)]
    except (KeyError, ValueError):
        return _failed(errand, f"This version of the program does not know the job {errand.job}.", clock)
    word = f"{kind.alone} of business {errand.business_id}"
    with only_one(word) if kind.alone else nullcontext(True) as is_free:
        if not is_free:
            again_at = clock() + timedelta(seconds=BUSY_SECONDS)
            return _Outcome(ErrandState.WAITING, errand.last_words, again_at, is_try=False)
        return _try(errand, kind, clock)


def _try(errand: Errand, kind: ErrandKind, clock: Callable[[], datetime]) -> _Outcome:
    try:
        with job_logged(errand.job, errand.pk):
            return _worked(errand, kind)
    except RuleBroken as refused:
        log.warning("refused: %s %s: %s", errand.job, errand.ids, refused.message)
        return _Outcome(ErrandState.STUCK, refused.message)
    except Exception as fault:  # because: whatever it is, it is kept and tried again
        log.exception("failed: %s %s, try %s", errand.job, errand.ids, errand.tries)
        return _failed(errand, f"{type(fault).__name__}: {fault}", clock)


def _worked(errand: Errand, kind: ErrandKind) -> _Outcome:
    """What is no failure, so that nobody who counts failures is called for it."""
    try:
        with done_by(Doing(by=errand.asked_by_id, via=f"errand {errand.job}", request=str(errand.pk))):
            kind.work(**errand.ids)
    except TryLater as later:
        return _Outcome(ErrandState.WAITING, str(later), later.at, is_try=False)
    except Gone as gone:
        return _Outcome(ErrandState.DONE, f"{gone} is gone")
    return _Outcome(ErrandState.DONE)


def _failed(errand: Errand, words: str, clock: Callable[[], datetime]) -> _Outcome:
    pause = pause_after(errand.tries, random.random())
    if pause is None:
        return _Outcome(ErrandState.STUCK, words, is_fault=True)
    return _Outcome(ErrandState.WAITING, words, clock() + pause, is_fault=True)


def _noted(errand: Errand, outcome: _Outcome, clock: Callable[[], datetime]) -> ErrandState | None:
    """`_end`, over a new connection where the old one broke."""
    for pause in END_PAUSES:
        try:
            return _end(errand, outcome, clock())
        except Error:
            log.warning("not noted yet: %s %s is %s", errand.job, errand.ids, outcome.state, exc_info=True)
            time.sleep(pause)
            _mend_connection()
    return _end(errand, outcome, clock())


def _mend_connection() -> None:
    """After a database that went away the next statement wants a new line to it. One that works stays, however old it
    is: with it the lock would go, and another could begin the errand before it is noted that it is done."""
    if not connection.in_atomic_block and connection.connection is not None and not connection.is_usable():
        connection.close()


@transaction.atomic(durable=True)
def _end(errand: Errand, outcome: _Outcome, at: datetime) -> ErrandState | None:
    """None where somebody else has it by now: our lock went with a broken connection, and theirs is the later word."""
    row = errand.locked()
    if row.state != ErrandState.UNDER_WAY or row.began_at != errand.began_at:
        return None
    row.state, row.last_words, row.is_fault = outcome.state.value, outcome.words[:500], outcome.is_fault
    if outcome.again_at is not None:
        row.due_at, row.handed_out_at = outcome.again_at, None
    else:
        row.ended_at = at
    if not outcome.is_try:
        row.tries -= 1
    row.save(
        update_fields=["state", "last_words", "is_fault", "due_at", "handed_out_at", "ended_at", "tries"]
    )
    return outcome.state
