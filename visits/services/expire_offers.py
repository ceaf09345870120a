"""Held hours whose time is up."""

from datetime import datetime

from django.db import transaction
from django.db.models import F

from trimops.kernel.scope import Scope
from visits.models import HeldHour, HeldState


@transaction.atomic
def expire_offers(*, scope: Scope, at: datetime) -> int:
    """Mark those that have run out by `at`; how many. They hold nothing from their own moment on, marked or not."""
    rows = HeldHour.objects.within(scope).filter(state=HeldState.HELD, until__lte=at)
    return rows.update(state=HeldState.EXPIRED, ended_at=F("until"))
