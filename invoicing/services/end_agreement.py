"""What was agreed with a farm holds no longer."""

from datetime import date, timedelta

from django.db import transaction

from invoicing.models import Agreement
from invoicing.services.lock_period import refuse_locked


@transaction.atomic
def end_agreement(*, agreement: Agreement, today: date) -> Agreement | None:
    """Today it holds for the last time; one that has not begun yet is taken off (None).

    PeriodLocked where tomorrow lies in a closed period. One that ended before stays as it was.
    """
    row = agreement.locked()
    if row.valid_until is not None and row.valid_until <= today:
        return row
    refuse_locked(scope=row.scope, day=today + timedelta(days=1), what="The first day without it")
    if row.valid_from > today:
        row.delete()
        return None
    row.valid_until = today
    row.full_clean()
    row.save()
    return row
