"""A change of the draft list is taken back: the rules decide about the cow again."""

from datetime import datetime

from django.db import transaction

from trimops.accounts.models import User
from visits.domain.draft_count import count_with, count_without
from visits.models import DraftChange, DraftKind, Visit
from visits.services.draft_change import begin_draft_change, draft_now, keep_count


@transaction.atomic
def take_back_draft_change(*, change: DraftChange, at: datetime, by: User) -> Visit:
    """The others on the list stay on it: it gets as much longer or shorter as the change had made it.

    A change that somebody took back meanwhile changes nothing. DraftIsClosed, DayIsFull.
    """
    row = begin_draft_change(change.visit)
    known = DraftChange.objects.within(row.scope).filter(pk=change.pk).select_related("cow").first()
    if known is None:
        return row
    before = draft_now(row, at).order(row.head_count)
    number, cow, kind = known.cow.number, known.cow_id, known.kind
    known.delete()
    after = draft_now(row, at)
    count = row.head_count
    if kind == DraftKind.STRUCK:
        longer = count_with(count, before, cow)
        count = longer if after.order(longer).has(cow) else count
    else:
        shorter = count_without(count, before, cow)
        count = count if after.order(shorter).has(cow) else shorter
    return keep_count(row, count, at=at, by=by, note=f"cow {number} {kind} no more")
