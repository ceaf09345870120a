"""A cow is added to the draft list."""

from datetime import datetime

from django.db import transaction

from farms.models import Cow
from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken
from visits.domain.draft_count import count_with
from visits.models import DraftChange, DraftKind, Visit
from visits.services.draft_change import begin_draft_change, draft_now, keep_count, refuse_strange_cow


class CowIsOnTheList(RuleBroken):
    """She comes anyway."""

    code = "cow_is_on_the_list"


@transaction.atomic
def add_draft_cow(*, visit: Visit, cow: Cow, why: str, at: datetime, by: User) -> Visit:
    """She is brought, whatever the rules say; a full list gets one cow longer. A cow that was struck is added again.

    CowCannotCome, CowIsOnTheList, DraftIsClosed, DayIsFull.
    """
    row = begin_draft_change(visit)
    refuse_strange_cow(row, cow)
    order = draft_now(row, at).order(row.head_count)
    if order.has(cow.pk):
        raise CowIsOnTheList(f"Cow {cow.number} is on the list already.")
    change = DraftChange.objects.within(row.scope).filter(visit=row, cow=cow).first()
    change = change or DraftChange(business_id=row.business_id, visit=row, cow=cow)
    change.kind, change.why, change.at, change.by = DraftKind.ADDED, why, at, by
    change.full_clean()
    change.save()
    count = count_with(row.head_count, order, cow.pk)
    return keep_count(row, count, at=at, by=by, note=f"cow {cow.number} added to the draft list: {why}")
