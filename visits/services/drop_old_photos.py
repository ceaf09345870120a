"""Photos of feet that are older than the business keeps them."""

from datetime import datetime

from trimops.kernel.scope import Scope
from trimops.tenancy.drop_in_steps import drop_in_steps
from visits.models import TrimPhoto


def drop_old_photos(*, scope: Scope, before: datetime) -> int:
    """Drop those taken before that aware instant; how many. Reports and letters keep what was printed on them."""
    return drop_in_steps(TrimPhoto.objects.within(scope).filter(taken_at__lt=before))
