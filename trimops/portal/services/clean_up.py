"""In the night of a business: what nobody needs any more is cleared away, a little at a time."""

from datetime import datetime

from django.contrib.sessions.models import Session
from django.db import transaction

from trimops.errands.services.drop_old_errands import drop_old_errands
from trimops.kernel.scope import Scope
from trimops.outbox.services.clear_old_messages import clear_old_messages
from visits.services.drop_old_holds import drop_old_holds

AT_ONCE = 500


def clean_up(*, scope: Scope, at: datetime) -> None:
    """Old errands, old messages, hours held in vain; and sign-ins that have run out, which are nobody's in particular.

    Many short transactions instead of a long one; stopped anywhere it goes on the next night. Links to sign in are
    signed, not stored, so none are left to clear away. `at` is aware.
    """
    drop_old_errands(scope=scope, at=at)
    clear_old_messages(scope=scope, at=at)
    drop_old_holds(scope=scope, at=at)
    while _drop_sign_ins(at):
        pass


@transaction.atomic
def _drop_sign_ins(at: datetime) -> int:
    # because: the nights of many businesses come at the same moment, and must not wait for each other's rows
    rows = Session.objects.select_for_update(skip_locked=True).filter(expire_date__lt=at)
    keys = list(rows.order_by("expire_date").values_list("pk", flat=True)[:AT_ONCE])
    Session.objects.filter(pk__in=keys).delete()
    return len(keys)
