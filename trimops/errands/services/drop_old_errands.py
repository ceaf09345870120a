"""Errands that nobody asks about any more."""

from datetime import datetime, timedelta

from django.db import transaction

from trimops.errands.domain.errand_states import ErrandState
from trimops.errands.models import Errand
from trimops.kernel.scope import Scope

DONE_KEPT = timedelta(days=14)
STUCK_KEPT = timedelta(days=180)
AT_ONCE = 500
"""Rows in one transaction: nobody else waits long for it."""


def drop_old_errands(*, scope: Scope, at: datetime, done_kept: timedelta = DONE_KEPT) -> int:
    """Drop what was done `done_kept` before the aware instant `at`, and what is stuck for half a year; how many."""
    dropped = 0
    for state, kept in ((ErrandState.DONE, done_kept), (ErrandState.STUCK, STUCK_KEPT)):
        while count := _drop_some(scope, state, at - kept):
            dropped += count
    return dropped


@transaction.atomic
def _drop_some(scope: Scope, state: ErrandState, before: datetime) -> int:
    rows = Errand.objects.within(scope).filter(state=state.value, ended_at__lt=before)
    ids = list(rows.order_by("ended_at").values_list("pk", flat=True)[:AT_ONCE])
    Errand.objects.within(scope).filter(pk__in=ids).delete()
    return len(ids)
