"""A cow is struck from the draft list."""

from datetime import datetime

from django.db import transaction

from farms.models import Cow
from trimops.accounts.models import User
from visits.domain.draft_count import count_without
from visits.models import DraftChange, DraftKind, Visit
from visits.services.draft_change import begin_draft_change, draft_now, keep_count, refuse_strange_cow


@transaction.atomic
def strike_cow(*, visit: Visit, cow: Cow, why: str, at: datetime, by: User) -> Visit:
    """She is not brought, whatever the rules say; a full list gets one cow shorter. A cow that was added is struck too.

    CowCannotCome, DraftIsClosed.
    """
    row = begin_draft_change(visit)
    refuse_strange_cow(row, cow)
    count = count_without(row.head_count, draft_now(row, at).order(row.head_count), cow.pk)
    change = DraftChange.objects.within(row.scope).filter(visit=row, cow=cow).first()
    change = change or DraftChange(business_id=row.business_id, visit=row, cow=cow)
    change.kind, change.why, change.at, change.by = DraftKind.STRUCK, why, at, by
    change.full_clean()
    change.save()
    return keep_count(row, count, at=at, by=by, note=f"cow {cow.number} struck from the draft list: {why}")
