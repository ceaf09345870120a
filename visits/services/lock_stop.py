"""A visit locked to where the plan has it: its van and day, or its hour too."""

from dataclasses import dataclass
from datetime import date, datetime
from enum import StrEnum

from django.db import transaction

from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken
from trimops.tenancy.same_business import require_same_business
from visits.models import PlanLock, Van, Visit, WeekPlan
from visits.selectors.plan_holds import LOCKABLE, stops_of


class LockOn(StrEnum):
    """How tight the lock is."""

    DAY = "day"
    HOUR = "hour"


class CannotLock(RuleBroken):
    """There is nothing to lock the visit to."""

    code = "cannot_lock"


@dataclass(frozen=True)
class _Spot:
    van: int
    day: date
    start: datetime


@transaction.atomic
def lock_stop(*, week_plan: WeekPlan, visit: Visit, on: LockOn, at: datetime, by: User) -> PlanLock:
    """Hold the visit where `week_plan` has it, also when the week is planned again. A second lock takes the place of
    the first. CannotLock where the plan leaves it out or its hour is confirmed anyway."""
    require_same_business(week_plan, visit)
    row = visit.locked()
    if row.visit_state not in LOCKABLE:
        raise CannotLock(
            f"This visit is {row.visit_state.label.lower()}: it stays where it is without a lock."
        )
    spot = _spot_of(week_plan, row.pk)
    if spot is None:
        raise CannotLock("The plan leaves this visit out: put it in first, then lock it.")
    van = Van.objects.within(row.scope).get(pk=spot.van)
    lock = PlanLock.objects.within(row.scope).filter(visit=row).first() or PlanLock(visit=row)
    lock.business_id, lock.van, lock.day = row.business_id, van, spot.day
    lock.start, lock.at, lock.by = (spot.start if on is LockOn.HOUR else None), at, by
    lock.full_clean()
    lock.save()
    return lock


def _spot_of(week_plan: WeekPlan, visit_pk: int) -> _Spot | None:
    for shift, stop in stops_of(week_plan.plan or {}):
        if stop["job"] == f"visit-{visit_pk}":
            _, van, day = shift.split("-", 2)
            return _Spot(int(van), date.fromisoformat(day), datetime.fromisoformat(str(stop["start"])))
    return None
