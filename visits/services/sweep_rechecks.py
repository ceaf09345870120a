"""The nightly look at every farm: open re-checks gathered, routine visits wanted as they fall due."""

from datetime import date, datetime

from farms.models import Farm
from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope
from visits.domain.routine_due import ASKED_BY_RULE, routine_due
from visits.domain.visit_states import VisitReason, VisitState
from visits.models import Recheck, Visit
from visits.services.ask_visit import VisitWish, ask_visit
from visits.services.gather_farm_rechecks import gather_farm_rechecks

AHEAD_DAYS = 10


def sweep_rechecks(*, scope: Scope, today: date, at: datetime) -> int:
    """Gather the open re-checks of each farm of the business; the number of wanted visits they need."""
    farm_ids = Recheck.objects.within(scope).open().values_list("farm_id", flat=True).distinct()
    farms = Farm.objects.within(scope).filter(pk__in=list(farm_ids)).order_by("pk")
    return sum(len(gather_farm_rechecks(farm=farm, today=today, at=at)) for farm in farms)


def sweep_routine(*, scope: Scope, today: date, at: datetime) -> int:
    """Want a routine visit at each farm whose interval runs out within the next days; the number newly wanted."""
    asked = 0
    for farm in _farms_without_a_routine_visit(scope):
        due = routine_due(_last_routine(farm), farm.routine_interval_days, today)
        if (due.first - today).days > AHEAD_DAYS:
            continue
        wish = VisitWish(
            VisitReason.ROUTINE, ASKED_BY_RULE, due.first, max(due.last, today), head_count=farm.routine_cows
        )
        ask_visit(farm=farm, wish=wish, at=at, by=None)
        asked += 1
    return asked


def _farms_without_a_routine_visit(scope: Scope) -> list[Farm]:
    busy = Visit.objects.within(scope).open().filter(reason=VisitReason.ROUTINE.value).values("farm_id")
    return list(Farm.objects.within(scope).active().exclude(pk__in=busy).order_by("pk"))


def _last_routine(farm: Farm) -> date | None:
    rows = Visit.objects.within(farm.scope).in_state(VisitState.FINISHED).filter(farm=farm)
    last = rows.filter(reason=VisitReason.ROUTINE.value).order_by("-finished_at").first()
    return local_day(last.finished_at, farm.business.zone) if last and last.finished_at else None
