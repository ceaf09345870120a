"""Somebody wants the week planned."""

from datetime import date, datetime

from django.db import transaction

from trimops.accounts.models import Business, User
from trimops.errands.services.enqueue import enqueue
from trimops.jobs import Job
from trimops.kernel.errors import RuleBroken
from visits.models import WeekPlan
from visits.selectors.week_problem import week_problem


class NothingToPlan(RuleBroken):
    """There is no visit or no shift in the week."""

    code = "nothing_to_plan"


@transaction.atomic
def ask_week_plan(*, business: Business, monday: date, at: datetime, by: User | None) -> WeekPlan:
    """Put the problem down as it stands now and have it thought about. `by` is None where no person asks."""
    problem = week_problem(business, monday, at)
    if not problem["jobs"]:
        raise NothingToPlan("No visit is wanted this week: ask for one at a farm's page first.")
    if not problem["shifts"]:
        raise NothingToPlan("No van goes out on the days left of this week: look at the shifts and days off.")
    plan = WeekPlan(business=business, monday=monday, problem=problem, asked_at=at, asked_by=by)
    plan.progress_text = "Waiting for its turn"
    plan.full_clean()
    plan.save()
    enqueue(Job.PLAN_WEEK, plan.business_id, week_plan_id=plan.pk)
    return plan
