"""The drives of a van on a day, as its finished visits tell them: from the base, farm to farm, and home."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime
from itertools import pairwise

from trimops.kernel.clock import from_to, local_day
from trimops.kernel.scope import Scope
from visits.domain.travel.place import Place
from visits.models import Van, Visit
from visits.models.visit import VisitQuerySet
from visits.selectors.business_figures import figures_of
from visits.selectors.length_history import finished_visits
from visits.selectors.reckoned_drives import ReckonedDrives, base_of, place_of, reckoned_drives

ROAD_MAP = "road map"
RECKONED = "reckoned, straight line times {circuity:g}"


@dataclass(frozen=True)
class DayDrive:
    """One drive. `visit` is the one driven to, or the last one for the drive home; `source`: who told the metres."""

    visit: Visit
    from_words: str
    to_words: str
    purpose: str
    metres: float
    source: str


def driven_van_days(scope: Scope, first: datetime, end: datetime) -> list[tuple[Van, date]]:
    """Vans and the days on which they went out, from the finished visits begun in that time. One query."""
    return van_days(_finished(scope, first, end))


def van_days(visits: VisitQuerySet) -> list[tuple[Van, date]]:
    """Vans and the days on which these visits had them out, with the business of each at hand. One query."""
    rows = visits.filter(van__isnull=False).select_related("van__business").order_by("started_at")
    found = {
        (visit.van_id, local_day(visit.started_at, visit.van.business.zone)): visit.van
        for visit in rows
        if visit.van and visit.started_at
    }
    return [(van, day) for (_, day), van in found.items()]


def day_drives(van: Van, day: date) -> list[DayDrive]:
    """In the order in which the visits began; none on a day without a finished visit. Three queries."""
    first, end = from_to(day, day, van.business.zone)
    rows = _finished(van.scope, first, end).filter(van=van).select_related("farm")
    visits = list(rows.order_by("started_at", "id"))
    if not visits:
        return []
    base = base_of(van)
    places = [base, *(place_of(visit.farm) for visit in visits), base]
    drives = reckoned_drives(
        van.scope, figures_of(van.scope).planning, list({p.key: p for p in places}.values())
    )
    legs = [_metres(drives, a, b) for a, b in pairwise(places)]
    return [_drive(visits, number, van, *leg) for number, leg in enumerate(legs)]


def _drive(visits: Sequence[Visit], number: int, van: Van, metres: float, source: str) -> DayDrive:
    """The drive to the visit of that number, or home after the last."""
    names = [van.base_name, *(visit.farm.name for visit in visits), van.base_name]
    goes_home = number == len(visits)
    visit = visits[min(number, len(visits) - 1)]
    purpose = "Home after the last visit" if goes_home else f"{visit.get_reason_display()} visit"
    return DayDrive(visit, names[number], names[number + 1], purpose, metres, source)


def _metres(drives: ReckonedDrives, a: Place, b: Place) -> tuple[float, str]:
    """By road where the map knows it, else the straight line stretched as planning does."""
    reckoned = RECKONED.format(circuity=drives.figures.circuity)
    return drives.metres(a, b), ROAD_MAP if drives.knows_road(a, b) else reckoned


def _finished(scope: Scope, first: datetime, end: datetime) -> VisitQuerySet:
    rows: VisitQuerySet = finished_visits(scope).filter(van__isnull=False)
    return rows.filter(started_at__gte=first, started_at__lt=end)
