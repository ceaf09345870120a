"""Somebody wants to know how good a plan is: how much cheaper anybody could drive this week."""

from django.db import transaction

from trimops.errands.services.enqueue import enqueue
from trimops.jobs import Job
from trimops.kernel.errors import RuleBroken
from visits.domain.planning.exact.pricing import MOST_JOBS
from visits.models import WeekPlan


class NotToBeProven(RuleBroken):
    """There is no plan, or its week is too large for a proof."""

    code = "not_to_be_proven"


@transaction.atomic
def ask_proof(*, week_plan: WeekPlan) -> WeekPlan:
    """Have the bound of the plan worked out in the background; what is found is written into the plan."""
    if week_plan.plan is None:
        raise NotToBeProven("There is no plan yet: plan the week first.")
    if len(week_plan.problem["jobs"]) > MOST_JOBS:
        raise NotToBeProven(f"A week of more than {MOST_JOBS} visits is too large for a proof.")
    enqueue(Job.PROVE_WEEK, week_plan.business_id, week_plan_id=week_plan.pk)
    return week_plan
