"""Every minute: visits of the plan whose hour has come are watched, and watches that are due are looked at."""

import logging
from datetime import datetime, timedelta

from django.db.models import Exists, OuterRef, Q, Subquery

from trimops.accounts.models import User
from trimops.errands.domain.errand_states import ErrandState
from trimops.errands.models import Errand
from trimops.errands.services.enqueue import enqueue
from trimops.jobs import Job
from trimops.tenancy.unscoped import unscoped
from visits.domain.lone_watch.watch_states import WatchState
from visits.domain.visit_states import VisitState
from visits.models import LoneWatch, Visit, WatchRules
from visits.services.lone_watch.begin_watch import begin_watch

log = logging.getLogger(__name__)

MOST_AT_ONCE = 500
AGAIN_WITHIN = timedelta(minutes=1)
OLDEST = timedelta(hours=12)
"""What was planned longer ago is no watch any more but a visit that somebody forgot to note."""


def find_due_watches(*, at: datetime) -> int:
    """Begin and hand out what is due at `at`, of all businesses; how many looks were asked for.

    Its queries do not grow with businesses that have nothing due. Two at once do no harm.
    """
    _begin_by_plan(at)
    with unscoped("watches of all businesses are looked through"):
        due = LoneWatch.objects.filter(next_at__lte=at).exclude(state=WatchState.ENDED.value)
        rows = list(due.order_by("next_at").values_list("pk", "business_id")[:MOST_AT_ONCE])
        asked = _asked_already(at)
    for pk, business_id in rows:
        if pk not in asked:
            enqueue(Job.LOOK_AT_WATCH, business_id, watch_id=pk)
    return len(rows)


def _asked_already(at: datetime) -> set[int]:
    """Looks that wait for a worker: another one would only wait behind them. One that failed, and would come again in
    an hour, comes again now."""
    open_ones = Errand.objects.filter(job=Job.LOOK_AT_WATCH.value, state=ErrandState.WAITING.value)
    found = list(open_ones.values_list("pk", "ids", "due_at"))
    late = [pk for pk, _, due_at in found if due_at > at + AGAIN_WITHIN]
    if late:
        open_ones.filter(pk__in=late).update(due_at=at, handed_out_at=None)
    return {int(ids["watch_id"]) for _, ids, _ in found}


def _begin_by_plan(at: datetime) -> None:
    """Visits that should be under way and of which nobody has said so: a phone without a network may hold that."""
    with unscoped("visits of all businesses that have the watch on"):
        on = WatchRules.objects.filter(is_on=True, watches_plan=True, business_id=OuterRef("business_id"))
        # because: one that ended since another van goes there says nothing of whoever goes there now
        is_of_this_van = Q(ended_at__gte=OuterRef("planned_start"), van_id=OuterRef("van_id"))
        is_known = Q(ended_at__isnull=True) | is_of_this_van
        known = LoneWatch.objects.filter(is_known, visit_id=OuterRef("pk"))
        rows = Visit.objects.filter(
            ~Exists(known),
            state__in=[VisitState.PLANNED.value, VisitState.CONFIRMED.value],
            van__isnull=False,
            planned_start__lte=at,
            planned_start__gt=at - OLDEST,
            # because: whoever switches it on in the afternoon is not asked where they were in the morning
            planned_start__gte=Subquery(on.values("changed_at")[:1]),
        )
        due = list(rows.select_related("van__trimmer", "business")[:MOST_AT_ONCE])
    for visit in due:
        if visit.planned_start is not None and visit.van is not None:
            _begin(visit, visit.van.trimmer, visit.planned_start)


def _begin(visit: Visit, trimmer: User, at: datetime) -> None:
    try:
        begin_watch(visit=visit, trimmer=trimmer, at=at, is_by_plan=True)
    except Exception:  # because: one visit that cannot be watched must not leave everybody else alone
        log.exception("not watched: visit %s", visit.pk)
