"""The last cow is done, the kit is washed, somebody has signed."""

from dataclasses import dataclass
from datetime import datetime

from django.db import transaction

from trimops.accounts.models import User
from trimops.jobs import Job, enqueue
from visits.domain.visit_states import VisitState
from visits.models import Visit
from visits.services.visit_change import begin_change, keep_change


@dataclass(frozen=True)
class SignOff:
    """Who signed, and what was done about hygiene."""

    signed_by: str
    washed_down: bool
    hygiene_note: str = ""


@transaction.atomic
def finish_visit(*, visit: Visit, sign_off: SignOff, at: datetime, by: User) -> Visit:
    """Close the visit, then have its re-checks gathered and its invoice drafted. A finished visit stays finished."""
    row = begin_change(visit, VisitState.FINISHED)
    row.finished_at = at
    row.signed_by = sign_off.signed_by
    row.washed_down = sign_off.washed_down
    row.hygiene_note = sign_off.hygiene_note
    keep_change(row, VisitState.FINISHED, at=at, by=by)
    enqueue(Job.BOOK_RECHECKS, visit_id=row.pk)
    enqueue(Job.DRAFT_INVOICE, visit_id=row.pk)
    return row
