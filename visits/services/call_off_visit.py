"""The visit will not be."""

from datetime import datetime

from django.db import transaction

from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken
from visits.domain.lone_watch.watch_states import WatchEnd
from visits.domain.visit_states import VisitState
from visits.models import Recheck, Visit
from visits.services.lone_watch.end_watch import end_watch_of
from visits.services.visit_change import begin_change, keep_change


class ReasonMissing(RuleBroken):
    """A visit is called off with a reason, or not at all."""

    code = "reason_missing"


@transaction.atomic
def call_off_visit(*, visit: Visit, because: str, at: datetime, by: User) -> Visit:
    """Call it off with its reason. Re-checks it was to see to are free to be gathered again."""
    if not because.strip():
        raise ReasonMissing("Say why the visit is called off: the farm will ask.")
    row = begin_change(visit, VisitState.CALLED_OFF)
    row.called_off_at, row.called_off_because = at, because.strip()[:200]
    Recheck.objects.within(row.scope).open().filter(visit=row).update(visit=None)
    end_watch_of(visit=row, how=WatchEnd.CALLED_OFF, at=at, by=by)
    return keep_change(row, VisitState.CALLED_OFF, at=at, by=by, note=because)
