"""Herd lists as they were handed in, long after."""

from datetime import datetime

from farms.models import HerdImport
from trimops.kernel.scope import Scope
from trimops.tenancy.drop_in_steps import drop_in_steps


def drop_old_herd_lists(*, scope: Scope, before: datetime) -> int:
    """Drop those handed in before that aware instant, applied or not; how many. The cows in them stay."""
    return drop_in_steps(HerdImport.objects.within(scope).filter(uploaded_at__lt=before))
