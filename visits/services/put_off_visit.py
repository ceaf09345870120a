"""A planned or confirmed visit goes back on the list of what is wanted."""

from datetime import datetime

from django.db import transaction

from trimops.accounts.models import User
from visits.domain.lone_watch.watch_states import WatchEnd
from visits.domain.visit_states import VisitState
from visits.models import Visit
from visits.selectors.draft_time import list_minutes
from visits.services.lone_watch.end_watch import end_watch_of
from visits.services.visit_change import begin_change, keep_change


@transaction.atomic
def put_off_visit(*, visit: Visit, because: str, at: datetime, by: User | None) -> Visit:
    """Take van and hour away; the wish stays, with its due days, and asks for the time that its draft list takes."""
    row = begin_change(visit, VisitState.WANTED)
    row.expected_minutes = list_minutes(row)
    row.van = row.planned_start = row.planned_finish = row.hour_told = None
    end_watch_of(visit=row, how=WatchEnd.CALLED_OFF, at=at, by=by)
    return keep_change(row, VisitState.WANTED, at=at, by=by, note=because)
