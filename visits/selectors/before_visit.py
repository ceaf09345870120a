"""What a farm's cows carried into a visit: blocks that were on, feet to be looked at again.

What the visit itself put on or booked is left out and what it took off or closed is kept, so that the answer is the
same before the first cow and after the last.
"""

from datetime import date

from django.db.models import Q, QuerySet

from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope
from visits.models import Block, Recheck, Visit


def visit_day(visit: Visit) -> date:
    """The day of the visit by the business's clock: begun, planned, else the first on which it is due."""
    at = visit.started_at or visit.planned_start
    return local_day(at, visit.business.zone) if at else visit.due_from


def blocks_before(scope: Scope, visit: Visit) -> QuerySet[Block]:
    """The blocks that stood on the farm's cows."""
    stood = Q(off_on__isnull=True) | Q(off_by__visit=visit)
    rows = Block.objects.within(scope).filter(stood, cow__farm_id=visit.farm_id)
    return rows.exclude(put_on_by__visit=visit)


def rechecks_before(scope: Scope, visit: Visit) -> QuerySet[Recheck]:
    """The feet of the farm's cows that were to be looked at again, due or not."""
    was_open = Q(closed_on__isnull=True) | Q(closed_by_trim__visit=visit)
    rows = Recheck.objects.within(scope).filter(was_open, farm_id=visit.farm_id)
    return rows.exclude(from_trim__visit=visit)
