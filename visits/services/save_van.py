"""A van is put on the list with its hours, or mended."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime, time

from django.db import transaction

from visits.models import DayOff, ShiftPattern, StockPlace, Van
from visits.services.kit.stock_place import name_of_place


@dataclass(frozen=True)
class VanHours:
    """The hours of one van, the same on each of `weekdays` (0 is Monday); the meal within them."""

    weekdays: Sequence[int]
    starts: time
    ends: time
    max_work_minutes: int
    max_cows: int
    meal_minutes: int
    meal_earliest: time
    meal_latest: time


@transaction.atomic
def save_van(*, van: Van, hours: VanHours, at: datetime) -> Van:
    """Keep the van and replace its hours. ValidationError names what to mend."""
    shown = Van.objects.within(van.scope).filter(pk=van.pk).values_list("name", "trimmer_id").first()
    van.full_clean()
    if shown != (van.name, van.trimmer_id):
        van.shown_since = at
    van.save()
    StockPlace.objects.within(van.scope).filter(van=van).update(name=name_of_place(van))
    ShiftPattern.objects.within(van.scope).filter(van=van).delete()
    for weekday in hours.weekdays:
        pattern = ShiftPattern(
            business_id=van.business_id,
            van=van,
            weekday=weekday,
            starts=hours.starts,
            ends=hours.ends,
            max_work_minutes=hours.max_work_minutes,
            max_cows=hours.max_cows,
            meal_minutes=hours.meal_minutes,
            meal_earliest=hours.meal_earliest,
            meal_latest=hours.meal_latest,
        )
        pattern.full_clean()
        pattern.save()
    return van


@transaction.atomic
def set_day_off(*, van: Van, day: date, reason: str, is_off: bool, at: datetime) -> None:
    """The van stays in on `day`, or goes out after all. Doing either twice changes nothing."""
    rows = DayOff.objects.within(van.scope).filter(van=van, day=day)
    if not is_off:
        rows.delete()
    elif not rows.exists():
        row = DayOff(business_id=van.business_id, van=van, day=day, reason=reason, noted_at=at)
        row.full_clean()
        row.save()
