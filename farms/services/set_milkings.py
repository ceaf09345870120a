"""When a farm milks."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import time

from django.db import transaction

from farms.models import Farm, Milking
from farms.services.refuse_erased import refuse_erased


@dataclass(frozen=True)
class DailyMilking:
    """A milking at the same time on each of these weekdays (0 is Monday)."""

    starts: time
    minutes: int
    weekdays: tuple[int, ...] = (0, 1, 2, 3, 4, 5, 6)


@transaction.atomic
def set_milkings(*, farm: Farm, milkings: Sequence[DailyMilking]) -> list[Milking]:
    """Replace the farm's milking times; an empty list means nobody milks at fixed times (robots, dry stock)."""
    refuse_erased(farm=farm)
    Milking.objects.within(farm.scope).filter(farm=farm).delete()
    rows = [
        Milking(
            business_id=farm.business_id, farm=farm, weekday=day, starts=item.starts, minutes=item.minutes
        )
        for item in milkings
        for day in item.weekdays
    ]
    for row in rows:
        row.full_clean()
        row.save()
    return rows
