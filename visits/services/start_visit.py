"""The van stands in the yard and the first cow is coming."""

from datetime import datetime

from django.db import transaction

from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken
from visits.domain.visit_states import VisitState
from visits.models import Visit
from visits.services.lone_watch.begin_watch import begin_watch
from visits.services.visit_change import begin_change, keep_change


class StartNotChecked(RuleBroken):
    """Gloves, guards, eyes, knives and crush have not been checked (T14)."""

    code = "start_not_checked"


@transaction.atomic
def start_visit(*, visit: Visit, checked: bool, at: datetime, by: User) -> Visit:
    """Begin the work, and the watch over whoever begins it. StartNotChecked until the start check is ticked."""
    if not checked:
        raise StartNotChecked("Go through the check before the first cow and tick it.")
    row = begin_change(visit, VisitState.UNDER_WAY)
    row.started_at, row.start_checked = at, True
    keep_change(row, VisitState.UNDER_WAY, at=at, by=by)
    begin_watch(visit=row, trimmer=by, at=at)
    return row
