"""Watches over lone work that nobody asks about any more."""

from datetime import datetime

from trimops.kernel.scope import Scope
from trimops.tenancy.drop_in_steps import drop_in_steps
from visits.domain.lone_watch.watch_states import WatchState
from visits.models import LoneWatch


def drop_old_watches(*, scope: Scope, before: datetime) -> int:
    """Drop those that ended before that aware instant, with who was asked and told and their log; how many."""
    rows = LoneWatch.objects.within(scope).filter(state=WatchState.ENDED.value, ended_at__lt=before)
    return drop_in_steps(rows)
