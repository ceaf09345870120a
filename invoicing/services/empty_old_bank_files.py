"""Files of the bank, long after their bookings came in."""

from datetime import datetime

from django.db import transaction

from invoicing.models import BankFile
from trimops.kernel.scope import Scope

AT_ONCE = 50


def empty_old_bank_files(*, scope: Scope, before: datetime) -> int:
    """Empty those kept before that aware instant; how many. Name and hash stay, so that the same file is known again.

    One that was never read goes as a whole: nothing came of it.
    """
    emptied = 0
    while count := _empty_some(scope, before):
        emptied += count
    return emptied


@transaction.atomic
def _empty_some(scope: Scope, before: datetime) -> int:
    rows = BankFile.objects.within(scope).filter(kept_at__lt=before).exclude(content=b"")
    ids = list(rows.order_by("kept_at").values_list("pk", flat=True)[:AT_ONCE])
    some = BankFile.objects.within(scope).filter(pk__in=ids)
    some.filter(read_at__isnull=True).delete()
    some.update(content=b"")
    return len(ids)
