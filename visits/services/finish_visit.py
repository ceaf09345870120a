"""The last cow is done, the kit is washed, somebody has signed."""

from dataclasses import dataclass
from datetime import datetime

from django.db import transaction

from trimops.accounts.models import User
from trimops.errands.services.enqueue import enqueue
from trimops.jobs import Job
from visits.domain.lone_watch.watch_states import WatchEnd
from visits.domain.visit_states import VisitState
from visits.models import Visit
from visits.services.kit.use_visit_kit import use_visit_kit
from visits.services.lone_watch.end_watch import end_watch_of
from visits.services.messages.want_telling import want_next_told
from visits.services.visit_change import begin_change, keep_change


@dataclass(frozen=True)
class SignOff:
    """Who received the account of it, what was done about hygiene, what was done at all, what is the farm's to do."""

    signed_by: str
    washed_down: bool
    hygiene_note: str = ""
    was_done: str = ""
    farm_to_do: str = ""


@transaction.atomic
def finish_visit(*, visit: Visit, sign_off: SignOff, at: datetime, by: User) -> Visit:
    """Close the visit and book what it used up once; then have its re-checks gathered, its invoice drafted, its report
    issued. It stays finished.
    """
    row = begin_change(visit, VisitState.FINISHED)
    row.finished_at = at
    _put_words(row, sign_off)
    keep_change(row, VisitState.FINISHED, at=at, by=by)
    end_watch_of(visit=row, how=WatchEnd.FINISHED, at=at, by=by)
    use_visit_kit(visit=row, at=at)
    enqueue(Job.BOOK_RECHECKS, row.business_id, visit_id=row.pk)
    enqueue(Job.DRAFT_INVOICE, row.business_id, visit_id=row.pk)
    enqueue(Job.ISSUE_REPORT, row.business_id, visit_id=row.pk)
    want_next_told(visit=row)
    return row


@transaction.atomic
def change_sign_off(*, visit: Visit, sign_off: SignOff, at: datetime) -> Visit:
    """Other words for a visit that is finished; when it was finished stays."""
    row = visit.locked()
    _put_words(row, sign_off)
    row.changed_at = at
    row.full_clean()
    row.save()
    return row


def _put_words(visit: Visit, sign_off: SignOff) -> None:
    visit.signed_by, visit.washed_down = sign_off.signed_by, sign_off.washed_down
    visit.hygiene_note = sign_off.hygiene_note
    visit.was_done, visit.farm_to_do = sign_off.was_done, sign_off.farm_to_do
