"""Links of vets that ended long ago."""

from datetime import datetime

from django.db.models import Q

from farms.models import VetPass
from trimops.kernel.scope import Scope
from trimops.tenancy.drop_in_steps import drop_in_steps


def drop_ended_passes(*, scope: Scope, before: datetime) -> int:
    """Drop those that ended, or were closed, before that aware instant; how many."""
    ended = Q(expires_at__lt=before) | Q(closed_at__lt=before)
    return drop_in_steps(VetPass.objects.within(scope).filter(ended))
