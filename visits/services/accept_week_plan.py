"""A proposed week becomes the diary."""

from datetime import datetime
from typing import TypedDict

from django.db import transaction

from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken
from trimops.kernel.scope import Scope
from visits.domain.visit_states import VisitState
from visits.models import Van, Visit, WeekPlan, WeekPlanState
from visits.services.visit_change import keep_change


class PlanIsStale(RuleBroken):
    """The week has changed since the plan was made."""

    code = "plan_is_stale"


class PlannedStop(TypedDict):
    """One stop of a stored plan, as far as the diary needs it."""

    job: str
    start: str
    finish: str


@transaction.atomic
def accept_week_plan(*, week_plan: WeekPlan, at: datetime, by: User) -> WeekPlan:
    """Give each visit of the plan its van and hour; planned visits that the plan leaves out go back to wanted.

    Confirmed visits are not touched. PlanIsStale when a visit of the plan has gone another way meanwhile.
    """
    row = week_plan.locked()
    if row.state != WeekPlanState.PROPOSED or row.plan is None:
        raise PlanIsStale("This plan is not open for acceptance any more: plan the week again.")
    stops = _stops(row.plan)
    visits = Visit.objects.within(row.scope).select_for_update().in_bulk([*stops, *_jobs(row.problem)])
    vans = Van.objects.within(row.scope).in_bulk([van for van, _ in stops.values()])
    for pk, (van_pk, stop) in stops.items():
        _give_hour(visits.get(pk), vans[van_pk], stop, at, by)
    for pk, visit in visits.items():
        if pk not in stops and visit.visit_state is VisitState.PLANNED:
            visit.van = visit.planned_start = visit.planned_finish = None
            keep_change(visit, VisitState.WANTED, at=at, by=by, note="left out of the new plan")
    _refuse_clash(row.scope, stops)
    WeekPlan.objects.within(row.scope).filter(monday=row.monday, state=WeekPlanState.ACCEPTED).update(
        state=WeekPlanState.SET_ASIDE
    )
    row.state, row.accepted_at = WeekPlanState.ACCEPTED, at
    row.save()
    return row


def _give_hour(visit: Visit | None, van: Van, stop: PlannedStop, at: datetime, by: User) -> None:
    start, finish = datetime.fromisoformat(stop["start"]), datetime.fromisoformat(stop["finish"])
    if visit is not None and visit.visit_state is VisitState.CONFIRMED:
        if visit.planned_start != start or visit.van_id != van.pk:
            raise PlanIsStale("A visit was confirmed for another hour since: plan the week again.")
        return
    if visit is None or visit.visit_state not in (VisitState.WANTED, VisitState.PLANNED):
        raise PlanIsStale("A visit of this plan has been called off or begun since: plan the week again.")
    if (visit.van_id, visit.planned_start, visit.planned_finish) == (van.pk, start, finish):
        return
    visit.van, visit.planned_start, visit.planned_finish = van, start, finish
    keep_change(visit, VisitState.PLANNED, at=at, by=by, note="by the week's plan")


def _refuse_clash(scope: Scope, stops: dict[int, tuple[int, PlannedStop]]) -> None:
    """PlanIsStale when a visit that the plan does not know stands in the diary at the hour of one that it does."""
    vans = {van for van, _ in stops.values()}
    rows = Visit.objects.within(scope).open().filter(van__in=vans, planned_start__isnull=False)
    for other in rows.exclude(pk__in=list(stops)):
        if any(van == other.van_id and _overlaps(other, stop) for van, stop in stops.values()):
            raise PlanIsStale("A visit was planned by hand in these hours since: plan the week again.")


def _overlaps(visit: Visit, stop: PlannedStop) -> bool:
    if visit.planned_start is None or visit.planned_finish is None:
        return False
    start, finish = datetime.fromisoformat(stop["start"]), datetime.fromisoformat(stop["finish"])
    return visit.planned_start < finish and visit.planned_finish > start


def _stops(plan: dict[str, list[dict[str, object]]]) -> dict[int, tuple[int, PlannedStop]]:
    """Visit key -> (van key, stop)."""
    found: dict[int, tuple[int, PlannedStop]] = {}
    for shift in plan["shifts"]:
        van = int(str(shift["id"]).split("-")[1])
        stops: list[PlannedStop] = shift["stops"]  # type: ignore[assignment]
        found.update({int(stop["job"].removeprefix("visit-")): (van, stop) for stop in stops})
    return found


def _jobs(problem: dict[str, list[dict[str, object]]]) -> list[int]:
    return [int(str(job["id"]).removeprefix("visit-")) for job in problem["jobs"]]
