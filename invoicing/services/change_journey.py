"""A drive of the mileage log is mended: what the odometer said takes the place of what was reckoned."""

from datetime import datetime
from decimal import Decimal

from django.db import transaction

from invoicing.models import Journey
from invoicing.services.lock_period import refuse_locked
from invoicing.services.note_journey import JourneyRefused, refuse_odd_distance
from trimops.accounts.models import User

ODOMETER = "odometer"


@transaction.atomic
def change_journey(
    *, journey: Journey, distance: Decimal, because: str, at: datetime, by: User, source: str = ODOMETER
) -> Journey:
    """Put `distance` (in the unit of the drive; 0: it was none for the business) in place of what stood there.

    The first figure is kept beside it and stays visible. JourneyRefused without a reason, PeriodLocked.
    """
    row = journey.locked()
    if not because.strip():
        raise JourneyRefused("Say why the figure is changed: the old one stays beside it.")
    refuse_odd_distance(distance)
    refuse_locked(scope=row.scope, day=row.on, what="The day of the drive")
    if row.reckoned is None:
        row.reckoned, row.reckoned_source = row.distance, row.source
    row.distance, row.source, row.mended_because = distance, source, because.strip()[:200]
    row.noted_at, row.noted_by = at, by
    row.full_clean()
    row.save()
    return row
