"""The drives and mornings of a business's last months, to learn from how they spread."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from itertools import groupby, pairwise
from zoneinfo import ZoneInfo

from trimops.accounts.models import Business
from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope
from visits.domain.arrival_windows.learn_drives import Driven
from visits.domain.travel.place import Place
from visits.models import Visit
from visits.selectors.business_figures import figures_of
from visits.selectors.length_history import finished_visits
from visits.selectors.reckoned_drives import ReckonedDrives, base_of, place_of, reckoned_drives

LOOK_BACK_DAYS = 365
MEAL_HOURS = (10.5, 14.5)
"""A gap that touches these hours of the day may hold the meal."""


@dataclass(frozen=True)
class DrivenDays:
    """Drives between farms outside of the meal's hours; (drive, minutes late) at each day's first farm."""

    between: list[Driven]
    first_late: list[tuple[float, float]]


def driven_days(business: Business, at: datetime) -> DrivenDays:
    """Of the last year, each drive beside what is reckoned for it now. Three queries."""
    scope, zone = Scope(business.pk), business.zone
    rows = finished_visits(scope).filter(
        started_at__gte=at - timedelta(days=LOOK_BACK_DAYS), van__isnull=False
    )
    visits = list(rows.select_related("farm", "van").order_by("van_id", "started_at"))
    places = {place.key: place for visit in visits for place in (place_of(visit.farm), _base(visit))}
    drives = reckoned_drives(scope, figures_of(scope).planning, list(places.values()))
    days = [list(group) for _, group in groupby(visits, key=lambda v: (v.van_id, _day(v, zone)))]
    return DrivenDays(
        [driven for day in days for driven in _between(day, drives, zone)],
        [late for day in days for late in _first_late(day[0], drives)],
    )


def _between(day: Sequence[Visit], drives: ReckonedDrives, zone: ZoneInfo) -> Iterator[Driven]:
    for before, after in pairwise(day):
        left, came = before.finished_at, after.started_at
        if left and came and left < came and not _may_hold_meal(left, came, zone):
            reckoned = drives.minutes(place_of(before.farm), place_of(after.farm))
            if reckoned:
                yield Driven(reckoned, _minutes(came - left))


def _first_late(first: Visit, drives: ReckonedDrives) -> Iterator[tuple[float, float]]:
    if first.planned_start and first.started_at:
        drive = drives.minutes(_base(first), place_of(first.farm))
        yield drive, _minutes(first.started_at - first.planned_start)


def _base(visit: Visit) -> Place:
    return base_of(visit.van) if visit.van else place_of(visit.farm)


def _may_hold_meal(left: datetime, came: datetime, zone: ZoneInfo) -> bool:
    return _hour(came, zone) > MEAL_HOURS[0] and _hour(left, zone) < MEAL_HOURS[1]


def _hour(at: datetime, zone: ZoneInfo) -> float:
    local = at.astimezone(zone)
    return local.hour + local.minute / 60


def _day(visit: Visit, zone: ZoneInfo) -> object:
    return local_day(visit.started_at, zone) if visit.started_at else None


def _minutes(span: timedelta) -> float:
    return span / timedelta(minutes=1)
