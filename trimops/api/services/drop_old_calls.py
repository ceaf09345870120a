"""After a week nobody repeats a call."""

from datetime import datetime, timedelta

from django.db import transaction

from trimops.api.models import RepeatableCall
from trimops.kernel.scope import Scope

KEPT = timedelta(days=7)


@transaction.atomic
def drop_old_calls(*, scope: Scope, at: datetime) -> int:
    """How many answers were put away."""
    gone, _ = RepeatableCall.objects.within(scope).filter(called_at__lt=at - KEPT).delete()
    return gone
