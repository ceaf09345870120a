"""A visit whose work is no longer what was billed is put on the office's list, or taken off it."""

from datetime import datetime

from django.db import transaction

from invoicing.models import LateWork
from invoicing.selectors.bill_difference import bill_difference
from visits.models import Visit


@transaction.atomic
def note_late_work(*, visit: Visit, at: datetime) -> LateWork | None:
    """Keep how many pieces were added and how many are gone; None, and off the list, when the bill fits the work."""
    difference = bill_difference(visit)
    rows = LateWork.objects.within(visit.scope)
    row = rows.filter(visit=visit).first()
    if not difference:
        if row is not None:
            row.delete()
        return None
    row = row or LateWork(business_id=visit.business_id, visit=visit, found_at=at)
    row.added, row.gone = len(difference.added), len(difference.gone)
    row.full_clean()
    row.save()
    return row
