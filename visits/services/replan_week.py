"""Something happened: the rest of the week is planned again, keeping what is promised."""

import json
from datetime import date, datetime

from django.db import transaction

from trimops.accounts.models import Business, User
from trimops.errands.services.enqueue import enqueue
from trimops.jobs import Job
from trimops.kernel.scope import Scope
from visits.domain.planning.compare_plans import StoredPlan
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.replan.broken_promises import parts
from visits.domain.planning.replan.plan_in_force import document_in_force, lost_shifts
from visits.domain.planning.replan.stored_change import StoredChange
from visits.domain.what_happened import WhatHappened
from visits.models import WeekPlan, WeekPlanState
from visits.selectors.business_figures import figures_of
from visits.selectors.week_travel import story_of_problem
from visits.selectors.week_under_way import LateWord, UnderWay, week_under_way
from visits.services.note_what_happened import Happening, note_what_happened

REPLAN_SECONDS = 2.0


@transaction.atomic
def replan_week(
    *, business: Business, monday: date, happening: Happening, at: datetime, by: User
) -> WeekPlan | None:
    """Put down what happened, and have a new plan of the week thought about; None where nothing is left to plan.

    The plan is a proposal. What happened stands, whether or not it is accepted.
    """
    before = week_under_way(business, monday, at)
    what, words = note_what_happened(happening=happening, at=at, by=by)
    late = happening if isinstance(happening, LateWord) else None
    now = week_under_way(business, monday, at, late)
    if not now.problem["jobs"]:
        return None
    plan = WeekPlan(business=business, monday=monday, problem=now.problem, asked_at=at, asked_by=by)
    plan.travel = story_of_problem(plan.scope, now.problem, figures_of(plan.scope).planning, at)
    plan.because, plan.change = words[:300], _change(business, before, now, what).as_json()
    plan.follows = (
        WeekPlan.objects.within(plan.scope).filter(monday=monday, state=WeekPlanState.ACCEPTED).first()
    )
    plan.progress_text = "Waiting for its turn"
    plan.full_clean()
    plan.save()
    enqueue(Job.REPLAN_WEEK, plan.business_id, week_plan_id=plan.pk)
    return plan


def _change(business: Business, before: UnderWay, now: UnderWay, what: WhatHappened) -> StoredChange:
    problem = read_problem(json.dumps(before.problem))
    entries = [*before.missed, *before.begun, *before.in_force]
    diary = document_in_force(problem, entries)
    shifts = [*parts(before.problem, "shifts"), *lost_shifts(problem, entries)]
    begun = {entry.job for entry in now.begun}
    return StoredChange(
        before=StoredPlan({**before.problem, "shifts": shifts}, diary),
        in_force=tuple(entry for entry in before.in_force if entry.job not in begun),
        price=figures_of(Scope(business.pk)).planning.price_of_change,
        asks=now.asks,
        facts=tuple(begun),
        to_farms=what.to_farms,
    )
