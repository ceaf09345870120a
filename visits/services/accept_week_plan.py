"""A proposed week becomes the diary."""

from collections.abc import Collection
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import TypedDict

from django.db import transaction

from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken
from trimops.kernel.scope import Scope
from visits.domain.planning.replan.stored_change import read_change
from visits.domain.visit_states import VisitState
from visits.models import HeldHour, Van, Visit, WeekPlan, WeekPlanState
from visits.selectors.plan_holds import visit_key
from visits.services.lock_vans import lock_vans
from visits.services.visit_change import keep_change


class PlanIsStale(RuleBroken):
    """The week has changed since the plan was made."""

    code = "plan_is_stale"


class PromiseNeedsYes(RuleBroken):
    """The plan moves a confirmed visit, and nobody has said yes to that."""

    code = "promise_needs_yes"


@dataclass(frozen=True)
class _Leave:
    """What the plan may do to confirmed visits: `asks` need a yes, `agreed` have it, `facts` are hours that are so."""

    asks: frozenset[int]
    agreed: frozenset[int]
    facts: frozenset[int]

    def may_move(self, visit: Visit) -> bool:
        """Whether this confirmed visit may lose its hour. PromiseNeedsYes where only the yes is missing."""
        if visit.pk in self.asks and visit.pk not in self.agreed:
            raise PromiseNeedsYes("Tick each confirmed visit that the plan moves, or drop the plan.")
        return visit.pk in self.asks


class PlannedStop(TypedDict):
    """One stop of a stored plan, as far as the diary needs it."""

    job: str
    start: str
    finish: str


@transaction.atomic
def accept_week_plan(
    *, week_plan: WeekPlan, at: datetime, by: User, agreed: Collection[int] = ()
) -> WeekPlan:
    """Give each visit of the plan its van and hour; planned visits that the plan leaves out go back to wanted.

    Confirmed visits are not touched, but for those that a plan made anew cannot keep: each of these moves only if it
    is among `agreed` (keys), else PromiseNeedsYes; it is then planned, and to be confirmed anew. Visits begun stay as
    they are. PlanIsStale when a visit of the plan has gone another way meanwhile.
    """
    row = week_plan.locked()
    if row.state != WeekPlanState.PROPOSED or row.plan is None:
        raise PlanIsStale("This plan is not open for acceptance any more: plan the week again.")
    lock_vans(scope=row.scope)
    stops = _stops(row.plan)
    visits = Visit.objects.within(row.scope).select_for_update().in_bulk([*stops, *_jobs(row.problem)])
    vans = Van.objects.within(row.scope).in_bulk([van for van, _ in stops.values()])
    leave = _leave(row, agreed)
    for pk, (van_pk, stop) in stops.items():
        _give_hour(visits.get(pk), vans[van_pk], stop, leave, (at, by))
    for pk, visit in visits.items():
        if pk not in stops:
            _leave_out(visit, leave, (at, by))
    _refuse_clash(row.scope, stops)
    _refuse_held(row.scope, stops, at)
    WeekPlan.objects.within(row.scope).filter(monday=row.monday, state=WeekPlanState.ACCEPTED).update(
        state=WeekPlanState.SET_ASIDE
    )
    row.state, row.accepted_at = WeekPlanState.ACCEPTED, at
    row.save()
    return row


def _leave(row: WeekPlan, agreed: Collection[int]) -> _Leave:
    change = read_change(row.change) if row.change else None
    asks, facts = (change.asks, change.facts) if change else ((), ())
    return _Leave(frozenset(map(visit_key, asks)), frozenset(agreed), frozenset(map(visit_key, facts)))


def _give_hour(
    visit: Visit | None, van: Van, stop: PlannedStop, leave: _Leave, who: tuple[datetime, User]
) -> None:
    start, finish = datetime.fromisoformat(stop["start"]), datetime.fromisoformat(stop["finish"])
    if visit is None:
        raise PlanIsStale("A visit of this plan is gone: plan the week again.")
    state, is_fact = visit.visit_state, visit.pk in leave.facts
    if is_fact and state in (VisitState.UNDER_WAY, VisitState.FINISHED):
        return
    if state not in (VisitState.WANTED, VisitState.PLANNED, VisitState.CONFIRMED):
        raise PlanIsStale("A visit of this plan has been called off or begun since: plan the week again.")
    if (visit.van_id, visit.planned_start) == (van.pk, start) and (
        state is VisitState.CONFIRMED or visit.planned_finish == finish
    ):
        if visit.planned_finish is not None and visit.planned_finish > finish:
            raise PlanIsStale("A visit got longer by its draft list since: plan the week again.")
        return
    if state is VisitState.CONFIRMED and not is_fact and not leave.may_move(visit):
        raise PlanIsStale("A visit was confirmed for another hour since: plan the week again.")
    if state is VisitState.CONFIRMED and not is_fact:
        visit.hour_told = visit.planned_start  # because: the farm counts on it until it is told another
    visit.van, visit.planned_start, visit.planned_finish = van, start, finish
    # because: a list that grew since has the minutes of the plan; its page says by how many cows it is too long
    visit.expected_minutes = round((finish - start) / timedelta(minutes=1))
    now = state if is_fact and state is VisitState.CONFIRMED else VisitState.PLANNED
    keep_change(visit, now, at=who[0], by=who[1], note="by the week's plan")


def _leave_out(visit: Visit, leave: _Leave, who: tuple[datetime, User]) -> None:
    state = visit.visit_state
    if state is VisitState.PLANNED or (state is VisitState.CONFIRMED and leave.may_move(visit)):
        visit.van = visit.planned_start = visit.planned_finish = visit.hour_told = None
        keep_change(visit, VisitState.WANTED, at=who[0], by=who[1], note="left out of the new plan")


def _refuse_clash(scope: Scope, stops: dict[int, tuple[int, PlannedStop]]) -> None:
    """PlanIsStale when a visit that the plan does not know stands in the diary at the hour of one that it does."""
    vans = {van for van, _ in stops.values()}
    rows = Visit.objects.within(scope).open().filter(van__in=vans, planned_start__isnull=False)
    for other in rows.exclude(pk__in=list(stops)):
        if any(van == other.van_id and _overlaps(other, stop) for van, stop in stops.values()):
            raise PlanIsStale("A visit was planned by hand in these hours since: plan the week again.")


def _refuse_held(scope: Scope, stops: dict[int, tuple[int, PlannedStop]], at: datetime) -> None:
    """PlanIsStale when the plan puts a visit into an hour that is held for a farm since."""
    for held in HeldHour.objects.within(scope).in_force(at).select_related("farm"):
        for van, stop in stops.values():
            start, finish = datetime.fromisoformat(stop["start"]), datetime.fromisoformat(stop["finish"])
            if van == held.van_id and held.start < finish and held.finish > start:
                raise PlanIsStale(f"An hour is held for {held.farm} since: plan the week again.")


def _overlaps(visit: Visit, stop: PlannedStop) -> bool:
    if visit.planned_start is None or visit.planned_finish is None:
        return False
    start, finish = datetime.fromisoformat(stop["start"]), datetime.fromisoformat(stop["finish"])
    return visit.planned_start < finish and visit.planned_finish > start


def _stops(plan: dict[str, list[dict[str, object]]]) -> dict[int, tuple[int, PlannedStop]]:
    """Visit key -> (van key, stop), but for hours that are only held."""
    found: dict[int, tuple[int, PlannedStop]] = {}
    for shift in plan["shifts"]:
        van = int(str(shift["id"]).split("-")[1])
        stops: list[PlannedStop] = shift["stops"]  # type: ignore[assignment]
        found.update({key: (van, stop) for stop in stops if (key := visit_key(stop["job"]))})
    return found


def _jobs(problem: dict[str, list[dict[str, object]]]) -> list[int]:
    return [key for job in problem["jobs"] if (key := visit_key(job["id"]))]
