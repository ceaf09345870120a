"""What keeps a visit where it is: a lock, a confirmed hour, work that has begun."""

from collections.abc import Iterable, Iterator, Mapping
from datetime import datetime
from zoneinfo import ZoneInfo

from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope
from visits.domain.planning.moves.hold_jobs import Hold
from visits.domain.visit_states import VisitState
from visits.models import PlanLock, Visit

LOCKABLE = (VisitState.WANTED, VisitState.PLANNED)


def lock_holds(scope: Scope, visits: Iterable[Visit], zone: ZoneInfo) -> dict[str, Hold]:
    """Job -> hold, of the locked ones among `visits`. A confirmed hour goes before a lock. One query."""
    keys = [visit.pk for visit in visits if visit.visit_state in LOCKABLE]
    locks = PlanLock.objects.within(scope).filter(visit__in=keys)
    return {
        f"visit-{lock.visit_id}": Hold(lock.shift, lock.start.astimezone(zone) if lock.start else None)
        for lock in locks
    }


def promise_holds(
    visits: Mapping[int, Visit],
    plan: Mapping[str, list[dict[str, object]]],
    zone: ZoneInfo,
    *,
    moves_promises: bool = False,
) -> dict[str, Hold]:
    """Confirmed visits at their hour; those begun or done at the hour that `plan` has for them.

    A plan that `moves_promises` (asked for when the week broke) holds confirmed visits too where it has them itself.
    """
    holds = {
        f"visit-{visit.pk}": Hold(
            f"van-{visit.van_id}-{local_day(visit.planned_start, zone)}", visit.planned_start.astimezone(zone)
        )
        for visit in visits.values()
        if visit.visit_state is VisitState.CONFIRMED and visit.planned_start is not None
    }
    by_plan = {VisitState.UNDER_WAY, VisitState.FINISHED}
    by_plan |= {VisitState.CONFIRMED} if moves_promises else set()
    for shift, stop in stops_of(plan):
        visit = visits.get(visit_key(stop["job"]))
        if visit is not None and visit.visit_state in by_plan:
            holds[str(stop["job"])] = Hold(shift, datetime.fromisoformat(str(stop["start"])))
    return holds


def stops_of(plan: Mapping[str, list[dict[str, object]]]) -> Iterator[tuple[str, dict[str, object]]]:
    """(shift, stop) of a plan document."""
    for shift in plan.get("shifts", []):
        stops = shift["stops"]
        for stop in stops if isinstance(stops, list) else []:
            yield str(shift["id"]), stop


def visit_key(job: object) -> int:
    """The key of the visit that a job of our problems stands for; 0 for an hour that is only held."""
    kind, _, key = str(job).partition("-")
    return int(key) if kind == "visit" else 0
