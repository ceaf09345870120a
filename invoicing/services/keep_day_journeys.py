"""The drives of days that are over go into the mileage log, made from the finished visits."""

from collections.abc import Sequence
from datetime import date, datetime, timedelta

from django.db import transaction

from invoicing.domain.mileage_allowance import in_unit
from invoicing.domain.travel_charge import DistanceUnit
from invoicing.models import Journey
from invoicing.selectors.day_drives import DayDrive, day_drives, driven_van_days
from invoicing.selectors.money_rules import money_rules
from invoicing.services.lock_period import PeriodLocked, refuse_locked
from trimops.accounts.models import Business
from trimops.kernel.clock import from_to, local_day
from trimops.kernel.scope import Scope
from visits.models import Van, Visit


@transaction.atomic
def keep_day_journeys(*, van: Van, day: date, at: datetime) -> list[Journey]:
    """Write the drives of a van's day; those new. None where they stand already, so it may run twice.

    A visit that arrives later has the day told anew. A day is left as it is once somebody mended a drive of it, once a
    farm of it was erased, or once it is in a closed period.
    """
    van.locked()
    rows = Journey.objects.within(van.scope).filter(van=van, on=day, is_by_hand=False)
    kept = list(rows.select_related("visit__farm"))
    told = day_drives(van, day)
    if not told or _is_settled(kept, told) or _is_locked(van.scope, day):
        return []
    Journey.objects.within(van.scope).filter(pk__in=[row.pk for row in kept]).delete()
    unit = DistanceUnit(money_rules(van.scope).distance_unit)
    return [_keep(van, day, number, drive, unit, at) for number, drive in enumerate(told, start=1)]


@transaction.atomic
def keep_journeys(*, business: Business, first: date, last: date, at: datetime) -> int:
    """The same for all vans from `first` to `last`, but not for today, which is not over. How many drives are new."""
    zone = business.zone
    start, stop = from_to(first, min(last, local_day(at, zone) - timedelta(days=1)), zone)
    days = driven_van_days(Scope(business.pk), start, stop)
    return sum(len(keep_day_journeys(van=van, day=day, at=at)) for van, day in days)


def _is_settled(kept: Sequence[Journey], told: Sequence[DayDrive]) -> bool:
    """True where the log tells of the same visits, or what it says must stay. Names may have changed since."""
    if any(row.reckoned is not None or _is_forgotten(row.visit) for row in kept):
        return True
    return [row.visit_id for row in kept] == [drive.visit.pk for drive in told]


def _is_forgotten(visit: Visit | None) -> bool:
    return visit is None or visit.farm.erased_at is not None


def _is_locked(scope: Scope, day: date) -> bool:
    try:
        refuse_locked(scope=scope, day=day)
    except PeriodLocked:
        return True
    return False


def _keep(van: Van, day: date, number: int, drive: DayDrive, unit: DistanceUnit, at: datetime) -> Journey:
    row = Journey(business_id=van.business_id, van=van, on=day, position=number, visit=drive.visit)
    row.from_words, row.to_words, row.purpose = drive.from_words, drive.to_words, drive.purpose
    row.distance, row.unit, row.source = in_unit(drive.metres, unit), unit.value, drive.source
    row.noted_at = at
    row.full_clean()
    row.save()
    return row
