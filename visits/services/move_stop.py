"""A stop of the week moved by hand, taken out, or put in: a new version of the plan, the one before set aside."""

import json
from dataclasses import dataclass
from datetime import datetime

from django.db import transaction

from trimops.accounts.models import User
from trimops.errands.services.enqueue import enqueue
from trimops.jobs import Job
from trimops.kernel.errors import RuleBroken
from trimops.tenancy.same_business import require_same_business
from visits.domain.planning.board import Week
from visits.domain.planning.moves.leave_by_hand import cost_nothing_out, left_by_hand
from visits.domain.planning.moves.week_orders import place_of, with_stop, without
from visits.domain.planning.moves.why_not import why_not
from visits.domain.planning.stored_week import PlanBreaksRules, document_of_week
from visits.models import PlanMaker, Visit, WeekPlan, WeekPlanState
from visits.selectors.plan_in_force import plan_in_force
from visits.selectors.standing_plan import StandingPlan, board_of, standing_plan
from visits.selectors.stop_places import why_words
from visits.services.set_plans_aside import set_other_plans_aside

BY_HAND = "Taken out by hand; it would fit."


class StopCannotGo(RuleBroken):
    """The stop cannot have that place."""

    code = "stop_cannot_go"


class PlanWasChanged(RuleBroken):
    """The plan is not the week's newest any more."""

    code = "plan_was_changed"


@dataclass(frozen=True)
class StopMove:
    """Where the visit's stop goes: the id of a shift and the position among its other stops; no shift takes it out."""

    visit: Visit
    shift: str = ""
    position: int = 0
    words: str = ""


@transaction.atomic
def move_stop(*, week_plan: WeekPlan, move: StopMove, at: datetime, by: User) -> WeekPlan:
    """The week with that one stop elsewhere, audited and proposed; `what_changed` says it in `move.words`.

    An accepted plan stays in the diary until the new one is accepted. StopCannotGo where a rule forbids it,
    PlanWasChanged where somebody was quicker.
    """
    require_same_business(week_plan, move.visit)
    row = week_plan.locked()
    newest = plan_in_force(row.scope, row.monday)
    if newest is None or newest.pk != row.pk:
        raise PlanWasChanged(
            "The week has been planned or changed meanwhile: look at it again, then move the stop."
        )
    standing = standing_plan(row, at)
    week = _moved(standing, move)
    if week == standing.week:
        return row
    version = _version(row, standing, week)
    version.state, version.percent, version.progress_text = WeekPlanState.PROPOSED, 100, "Done"
    version.what_changed, version.asked_at, version.asked_by, version.finished_at = (
        move.words[:200],
        at,
        by,
        at,
    )
    version.full_clean()
    version.save()
    set_other_plans_aside(week_plan=version)
    enqueue(Job.GIVE_REASONS, version.business_id, week_plan_id=version.pk)
    return version


def _moved(standing: StandingPlan, move: StopMove) -> Week:
    job = standing.job_of(move.visit.pk)
    here = place_of(standing.week, job)
    target = standing.shift_of(move.shift) if move.shift else None
    if {here[0] if here else None, target} & set(standing.closed):
        raise StopCannotGo("This day has begun: its stops stay as they are.")
    if target is None:
        if standing.board.problem.jobs[job].leave_out_cost is None:
            raise StopCannotGo("It must be planned: it is urgent, confirmed or locked.")
        return without(standing.week, job)
    try:
        week = with_stop(standing.week, job, target, move.position)
    except IndexError:
        raise StopCannotGo("There is no such place on that day any more: look at the week again.") from None
    if why := why_not(standing.board, target, week[target]):
        raise StopCannotGo(why_words(why, standing, job))
    return week


def _version(row: WeekPlan, standing: StandingPlan, week: Week) -> WeekPlan:
    """The new version, unsaved. What is left out by a person's will costs nothing in its problem: so the reason for
    it is true, as the audit wants it."""
    problem: dict[str, list[dict[str, object]]] = json.loads(standing.text)
    left = {job.id: job.leave_out_cost for job in left_by_hand(standing.board, week)}
    cost_nothing_out(problem["jobs"], set(left))
    text = json.dumps(problem)
    try:
        document = document_of_week(text, board_of(text), week)
    except (ValueError, PlanBreaksRules) as fault:
        raise StopCannotGo(f"The week would break a rule: {str(fault).splitlines()[0]}") from fault
    _say_by_hand(document, set(left))
    version = WeekPlan(business_id=row.business_id, monday=row.monday, follows=row, left_by_hand=left)
    version.problem, version.plan, version.travel = problem, document, row.travel
    version.because, version.change, version.made_by = row.because, row.change, PlanMaker.HAND
    return version


def _say_by_hand(document: dict[str, object], left: set[str]) -> None:
    entries = document["left_out"]
    for entry in entries if isinstance(entries, list) else []:
        if entry["job"] in left:
            entry["detail"] = BY_HAND
