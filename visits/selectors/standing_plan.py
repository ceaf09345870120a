"""A stored plan as it stands now: its own problem, with what has been promised or locked since held in place."""

import json
from collections.abc import Collection, Iterable, Mapping
from copy import deepcopy
from dataclasses import dataclass
from datetime import date, datetime
from functools import lru_cache

from trimops.kernel.errors import NotFound
from trimops.kernel.scope import Scope
from visits.domain.planning.board import Board, Week
from visits.domain.planning.measures import tick
from visits.domain.planning.moves.hold_jobs import Hold, hold_jobs
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.stored_week import week_of_document
from visits.domain.visit_states import VisitState
from visits.models import HeldHour, Visit, WeekPlan
from visits.selectors.held_hours import held_in_week
from visits.selectors.plan_holds import LOCKABLE, lock_holds, promise_holds, stops_of, visit_key
from visits.selectors.week_problem import week_problem

Parts = list[dict[str, object]]


@dataclass(frozen=True)
class StandingPlan:
    """Orders by the indexes of the board's problem. `closed` are the shifts that have begun, `kept` the jobs locked
    to their van and day; `farms` are names by the id of the job."""

    week_plan: WeekPlan
    text: str
    board: Board
    week: Week
    closed: frozenset[int]
    kept: frozenset[int]
    farms: Mapping[str, str]

    def job_of(self, visit_pk: int) -> int:
        """The index of the visit's job; NotFound where the plan does not know it."""
        for at, job in enumerate(self.board.problem.jobs):
            if job.id == f"visit-{visit_pk}":
                return at
        raise NotFound("This plan does not know that visit.")

    def shift_of(self, shift_id: str) -> int:
        """The index of the shift; NotFound where the plan does not have it."""
        for at, shift in enumerate(self.board.problem.shifts):
            if shift.id == shift_id:
                return at
        raise NotFound("This plan does not know that day.")

    def names(self) -> list[str]:
        """The farms of the jobs, by index."""
        return [self.farms[job.id] for job in self.board.problem.jobs]


def standing_plan(week_plan: WeekPlan, now: datetime) -> StandingPlan:
    """Confirmed and locked visits are held where they are; called-off ones and hours held no more are gone.

    Three queries, more where a visit has been let go since: its hours are then asked anew.
    """
    scope, zone = Scope(week_plan.business_id), week_plan.business.zone
    problem: dict[str, Parts] = deepcopy(week_plan.problem)
    visits = Visit.objects.within(scope).select_related("farm")
    known = visits.in_bulk([visit_key(job["id"]) for job in problem["jobs"]])
    plan: dict[str, Parts] = week_plan.plan or {}
    placed = {str(stop["job"]) for _, stop in stops_of(plan)}
    farms = _farms(known.values(), placed) | _held(held_in_week(scope, week_plan.monday, zone, now))
    locks = lock_holds(scope, known.values(), zone)
    holds = locks | promise_holds(known, plan, zone, moves_promises=week_plan.change is not None)
    _reckon_again(problem["jobs"], week_plan.left_by_hand)
    problem["jobs"] = _let_go([job for job in problem["jobs"] if job["id"] in farms], holds, week_plan)
    hold_jobs(problem["jobs"], problem["shifts"], holds)
    text = json.dumps(problem)
    board = board_of(text)
    kept = [at for at, job in enumerate(board.problem.jobs) if job.id in locks and job.fixed is None]
    begun = [at for at, shift in enumerate(board.problem.shifts) if shift.start <= tick(now)]
    week = week_of_document(board.problem, plan)
    return StandingPlan(week_plan, text, board, week, frozenset(begun), frozenset(kept), farms)


def _farms(visits: Iterable[Visit], placed: Collection[str]) -> dict[str, str]:
    """Job -> farm, of visits that are still the plan's to place: not called off, and not promised or begun without
    it."""
    names = {}
    for visit in visits:
        job, state = f"visit-{visit.pk}", visit.visit_state
        if state in LOCKABLE or (job in placed and state is not VisitState.CALLED_OFF):
            names[job] = visit.farm.name
    return names


def _held(hours: Iterable[HeldHour]) -> dict[str, str]:
    return {hour.job: f"{hour.farm.name} (hour held)" for hour in hours}


def _reckon_again(jobs: Parts, left_by_hand: Mapping[str, float | None]) -> None:
    """What leaving a visit out is reckoned at, where a plan by hand had set it to nothing."""
    for job in jobs:
        if str(job["id"]) in left_by_hand:
            cost = left_by_hand[str(job["id"])]
            job.pop("leave_out_cost", None)
            job |= {} if cost is None else {"leave_out_cost": cost}


def _let_go(jobs: Parts, holds: Mapping[str, Hold], week_plan: WeekPlan) -> Parts:
    """The jobs; one that was held when the plan was made, and is not so any more, with all its hours again."""
    held = [job for job in jobs if ("fixed" in job or "crews" in job) and visit_key(job["id"])]
    freed = {str(job["id"]) for job in held if _is_freer(holds.get(str(job["id"])))}
    if not freed:
        return jobs
    anew: dict[str, Parts] = week_problem(  # type: ignore[assignment]
        week_plan.business, week_plan.monday, week_plan.asked_at
    )
    fresh = {str(job["id"]): job for job in anew["jobs"] if str(job["id"]) in freed}
    return [fresh.get(str(job["id"]), job) for job in jobs]


def _is_freer(hold: Hold | None) -> bool:
    return hold is None or hold.start is None


@lru_cache(maxsize=4)
def board_of(text: str) -> Board:
    """The board of a problem document. Reading it and measuring its roads is most of the work of pricing a move."""
    return Board(read_problem(text))


def shift_parts(shift: object) -> tuple[int, date]:
    """The key of the van and the day that a shift of our problems stands for."""
    _, van, day = str(shift).split("-", 2)
    return int(van), date.fromisoformat(day)
