"""A proposed week is not wanted."""

from datetime import datetime

from django.db import transaction

from trimops.accounts.models import User
from visits.models import WeekPlan, WeekPlanState
from visits.services.accept_week_plan import PlanIsStale


@transaction.atomic
def drop_week_plan(*, week_plan: WeekPlan, at: datetime, by: User) -> WeekPlan:
    """Set a proposal aside; the diary stays as it is. PlanIsStale where it is none any more."""
    row = week_plan.locked()
    if row.state != WeekPlanState.PROPOSED:
        raise PlanIsStale("This plan is not open any more: look at the week.")
    row.state = WeekPlanState.SET_ASIDE
    row.finished_at = row.finished_at or at
    row.save()
    return row
