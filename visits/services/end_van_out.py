"""The van is back, or will be at another time."""

from datetime import datetime

from django.db import transaction

from trimops.accounts.models import User
from visits.models import VanOut


@transaction.atomic
def end_van_out(*, van_out: VanOut, at: datetime, by: User) -> VanOut | None:
    """It works again from `at` on. One that has not begun by then never was: it goes, and None comes back.

    One that has ended already stays as it is.
    """
    row = van_out.locked()
    if row.since >= at:
        row.delete()
        return None
    if row.until > at:
        row.until, row.noted_at, row.noted_by = at, at, by
        row.calendar_sequence += 1
        row.full_clean()
        row.save()
    return row
