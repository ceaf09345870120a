"""The farm has been told its hour."""

from datetime import datetime

from django.db import transaction

from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken
from visits.domain.visit_states import VisitState
from visits.models import Visit
from visits.services.visit_change import add_event


class NoHourToTell(RuleBroken):
    """The visit has no hour that a farm could be told."""

    code = "no_hour_to_tell"


@transaction.atomic
def tell_hour(*, visit: Visit, at: datetime, by: User | None, note: str = "told its hour") -> Visit:
    """From now on the farm counts on this hour, and planning again pays for moving it. Twice changes nothing."""
    row = visit.locked()
    if row.visit_state not in (VisitState.PLANNED, VisitState.CONFIRMED) or row.planned_start is None:
        raise NoHourToTell("This visit has no hour to tell: accept a plan first, or look at its page.")
    if row.hour_told == row.planned_start:
        return row
    row.hour_told, row.changed_at = row.planned_start, at
    row.full_clean()
    row.save()
    add_event(row, before=row.state, at=at, by=by, note=note)
    return row
