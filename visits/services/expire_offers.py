"""Held hours whose time is up."""

from datetime import datetime

from django.db import transaction
from django.db.models import F

from trimops.kernel.scope import Scope
from trimops.tenancy.unscoped import unscoped
from visits.models import HeldHour, HeldState


@transaction.atomic
def expire_offers(*, at: datetime, scope: Scope | None = None) -> int:
    """Mark those that have run out by `at`, of all businesses or of the scope's; how many.

    They hold nothing from their own moment on, marked or not.
    """
    ended = {"state": HeldState.EXPIRED, "ended_at": F("until")}
    if scope is not None:
        return HeldHour.objects.within(scope).filter(state=HeldState.HELD, until__lte=at).update(**ended)
    with unscoped("that an hour has run out hangs on the clock alone"):
        return HeldHour.objects.filter(state=HeldState.HELD, until__lte=at).update(**ended)
