"""For each van: the farm it goes to next, what that farm asks, and whether it goes there clean."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime, timedelta

from farms.domain.hygiene import HygieneLevel
from trimops.kernel.scope import Scope
from visits.domain.kit.next_wash import NextWash, next_wash
from visits.domain.visit_states import VisitState
from visits.models import Van, Visit, WashDown

COMING = (VisitState.PLANNED, VisitState.CONFIRMED)
LOOK_BACK = timedelta(days=60)


@dataclass(frozen=True)
class NextYard:
    """The van's next visit and the one it comes from; `wash` None where nothing is planned."""

    van: Van
    next: Visit | None
    before: Visit | None
    wash: NextWash | None


def next_farm_wash(scope: Scope, now: datetime) -> list[NextYard]:
    """The vans that go out, in their order. Four queries."""
    vans = list(Van.objects.within(scope).filter(is_active=True))
    coming = Visit.objects.within(scope).in_state(*COMING).filter(planned_start__gte=now)
    ahead = _first_by_van(coming.order_by("planned_start", "pk").select_related("farm"))
    been = Visit.objects.within(scope).filter(started_at__gte=now - LOOK_BACK, started_at__lte=now)
    behind = _first_by_van(been.order_by("-started_at", "-pk").select_related("farm"))
    keys = [visit.pk for visit in behind.values()]
    washed = set(WashDown.objects.within(scope).filter(visit_id__in=keys).values_list("visit_id", flat=True))
    return [_yard(van, ahead.get(van.pk), behind.get(van.pk), washed) for van in vans]


def _first_by_van(visits: Iterable[Visit]) -> dict[int, Visit]:
    found: dict[int, Visit] = {}
    for visit in visits:
        if visit.van_id is not None:
            found.setdefault(visit.van_id, visit)
    return found


def _yard(van: Van, ahead: Visit | None, behind: Visit | None, washed: set[int]) -> NextYard:
    if ahead is None:
        return NextYard(van, None, behind, None)
    is_washed = behind is not None and (behind.washed_down or behind.pk in washed)
    level = HygieneLevel(behind.farm.hygiene_level) if behind else None
    to = HygieneLevel(ahead.farm.hygiene_level)
    return NextYard(van, ahead, behind, next_wash(to=to, before=level, is_washed=is_washed))
