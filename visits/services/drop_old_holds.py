"""Hours that were held for a farm and that nobody took."""

from datetime import datetime, timedelta

from django.db import transaction

from trimops.kernel.scope import Scope
from visits.models import HeldHour, HeldState

KEPT = timedelta(days=30)
AT_ONCE = 500


def drop_old_holds(*, scope: Scope, at: datetime) -> int:
    """Drop those that ran out or were let go a month before the aware instant `at`; how many."""
    dropped = 0
    while count := _drop_some(scope, at - KEPT):
        dropped += count
    return dropped


@transaction.atomic
def _drop_some(scope: Scope, before: datetime) -> int:
    rows = HeldHour.objects.within(scope).filter(until__lt=before)
    rows = rows.filter(state__in=(HeldState.EXPIRED, HeldState.LET_GO))
    ids = list(rows.order_by("until").values_list("pk", flat=True)[:AT_ONCE])
    HeldHour.objects.within(scope).filter(pk__in=ids).delete()
    return len(ids)
