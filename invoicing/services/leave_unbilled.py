"""Work is left unbilled on the office's word."""

from datetime import datetime

from django.db import transaction

from invoicing.domain.visit_work import piece_words
from invoicing.domain.work_difference import work_difference
from invoicing.models import BilledWork
from invoicing.selectors.draft_work import as_claim, claims_on
from invoicing.selectors.visit_work import visit_work
from invoicing.services.note_late_work import note_late_work
from invoicing.services.open_draft import Hand
from invoicing.services.want_reason import want_reason
from trimops.kernel.errors import RuleBroken
from visits.domain.visit_states import VisitState
from visits.models import Visit


class NothingToLeave(RuleBroken):
    """Work that is not finished is not billed yet, nor left."""

    code = "nothing_to_leave"


@transaction.atomic
def leave_unbilled(*, visit: Visit, hand: Hand) -> int:
    """What nothing bills of a finished visit is held without a line, and why; how many pieces that are.

    Discarding a draft, or `bill_after_all`, brings such work back. ReasonMissing, NothingToLeave before the finish.
    """
    because = want_reason(words=hand.reason, ask="Say why it is not billed: the reason is kept.")
    visit.farm.locked()
    row = visit.locked()
    if row.visit_state is not VisitState.FINISHED or row.finished_at is None:
        raise NothingToLeave("Finish the visit first: only finished work is billed, or left unbilled.")
    return hold_unbilled(visit=row, because=because, at=hand.at)


@transaction.atomic
def hold_unbilled(*, visit: Visit, because: str, at: datetime) -> int:
    """The same for a visit that is locked, with its farm; how many pieces that are."""
    claims = claims_on(visit.scope, [visit])
    added = work_difference(visit_work(visit).pieces, [as_claim(claim) for claim in claims]).added
    BilledWork.objects.bulk_create(
        BilledWork(
            business_id=visit.business_id,
            visit=visit,
            trim_id=piece.trim_id,
            key=piece.key,
            words=piece_words(piece)[:200],
            not_billed_because=because[:200],
        )
        for piece in added
    )
    note_late_work(visit=visit, at=at)
    return len(added)


@transaction.atomic
def bill_after_all(*, visit: Visit, hand: Hand) -> int:
    """Work of the visit that was left unbilled as a whole is to be billed again; how many pieces."""
    row = visit.locked()
    left = BilledWork.objects.within(row.scope).filter(visit=row, invoice__isnull=True, line__isnull=True)
    count, _ = left.delete()
    note_late_work(visit=row, at=hand.at)
    return count
