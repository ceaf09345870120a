"""Every few seconds: what is due once a day is begun, and what nobody has in hand is handed out."""

import logging
from datetime import datetime, timedelta

import redis
from django.conf import settings
from django.db import transaction
from django.db.models import Q

from trimops.errands.domain.errand_states import ErrandState
from trimops.errands.models import Errand
from trimops.errands.only_one import only_one
from trimops.errands.services.begin_daily import begin_daily
from trimops.errands.services.hand_out import goes_to_workers, hand_out
from trimops.jobs import (
    DAILY_QUEUE,
    LONG_JOBS,
    LONG_QUEUE,
    PROMPT_QUEUE,
    URGENT_JOBS,
    URGENT_QUEUE,
    Job,
)
from trimops.tenancy.unscoped import unscoped
from trimops.watch.timetable import note_beat

log = logging.getLogger(__name__)

MOST_AT_ONCE = 500
"""Errands handed out in one go; the next tick brings more."""
LOST_AFTER = timedelta(seconds=10)
"""An errand handed out that long ago, when nothing waits at the broker, was lost by it."""
SURELY_LOST_AFTER = timedelta(minutes=10)
"""And after this it is handed out again whatever waits there; if it was not lost, the second finds it done."""
DEAD_AFTER = timedelta(seconds=10)
"""Whoever has been at an errand that long is looked after: is it still there?"""

_IS_LONG = Q(job__in=[job.value for job in LONG_JOBS])
_IS_URGENT = Q(job__in=[job.value for job in URGENT_JOBS])
IN_QUEUE = {
    URGENT_QUEUE: Q(day__isnull=True) & _IS_URGENT,
    PROMPT_QUEUE: Q(day__isnull=True) & ~_IS_URGENT & ~_IS_LONG,
    DAILY_QUEUE: Q(day__isnull=False),
    LONG_QUEUE: Q(day__isnull=True) & _IS_LONG,
}
"""The errands of each queue at the broker, as `queue_of` deals them out."""


def tick(*, now: datetime) -> int:
    """Begin and hand out what is due at the aware instant `now`; how many errands were handed out.

    Two at a time do no harm and the second does nothing. It reads a number of rows that does not grow with the
    businesses that have nothing to do.
    """
    with only_one("tick") as is_mine:
        if not is_mine:
            return 0
        begin_daily(now=now)
        _free_the_dead(now)
        _leave_sign(now)
        due = _due(now, _queues_at_rest())
        for errand in due:
            hand_out(job=errand.job, errand_id=errand.pk, is_daily=errand.day is not None)
        return len(due)


def _leave_sign(now: datetime) -> None:
    try:
        note_beat(now)
    except Exception:  # because: whoever watches may be told late, the work must not wait for that
        log.warning("no sign left that the timetable is kept", exc_info=True)


def _free_the_dead(now: datetime) -> None:
    """An errand that is under way, and whose lock is free, was left by a process that was killed."""
    with unscoped("errands of all businesses are looked through"):
        rows = Errand.objects.filter(state=ErrandState.UNDER_WAY.value, began_at__lt=now - DEAD_AFTER)
        begun = list(rows.order_by("began_at")[:MOST_AT_ONCE])
    for errand in begun:
        with only_one(f"errand {errand.pk}") as is_free:
            if is_free:
                with unscoped("an errand is known by its number"):
                    rows = Errand.objects.filter(pk=errand.pk, state=ErrandState.UNDER_WAY.value)
                    rows.update(state=ErrandState.WAITING.value, handed_out_at=None)


@transaction.atomic
def _due(now: datetime, at_rest: Q) -> list[Errand]:
    """Those that wait and that nobody was given, or that the broker lost; marked as handed out."""
    is_fresh = Q(handed_out_at__isnull=True)
    is_lost = at_rest & Q(handed_out_at__lt=now - LOST_AFTER) | Q(handed_out_at__lt=now - SURELY_LOST_AFTER)
    with unscoped("errands of all businesses are handed out"):
        # A job that only a newer version knows waits for it.
        known = Errand.objects.filter(job__in=[job.value for job in Job])
        rows = known.filter(is_fresh | is_lost, state=ErrandState.WAITING.value, due_at__lte=now)
        found = list(rows.order_by("due_at", "id")[:MOST_AT_ONCE])
        Errand.objects.filter(pk__in=[errand.pk for errand in found]).update(handed_out_at=now)
    return found


def _queues_at_rest() -> Q:
    """The errands whose queue at the broker is empty: of these, what was handed out is no longer on its way."""
    if not goes_to_workers():
        return Q()
    at_rest = Q(pk__in=[])
    try:
        with redis.Redis.from_url(settings.REDIS_URL, socket_timeout=3, socket_connect_timeout=3) as broker:
            for queue, waiting_there in IN_QUEUE.items():
                if not broker.llen(queue):
                    at_rest |= waiting_there
    except redis.RedisError:
        log.warning("the broker does not answer", exc_info=True)
    return at_rest
