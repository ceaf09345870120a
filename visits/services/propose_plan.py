"""What was thought out becomes the proposal of its week."""

from datetime import datetime

from django.db import transaction

from visits.models import WeekPlan, WeekPlanState
from visits.services.set_plans_aside import set_other_plans_aside


@transaction.atomic
def propose_plan(*, week_plan: WeekPlan, at: datetime) -> bool:
    """Keep the plan (and problem) that `week_plan` bears by now, and set the other proposals of its week aside.

    False, and nothing is changed, where it is not being thought about any more: the line to the database broke, and
    with it the lock that keeps two from thinking about one plan; the other one's may be in the diary by now.
    """
    if week_plan.locked().state != WeekPlanState.THINKING:
        return False
    set_other_plans_aside(week_plan=week_plan)
    week_plan.state, week_plan.finished_at = WeekPlanState.PROPOSED, at
    week_plan.percent, week_plan.progress_text = 100, "Done"
    week_plan.save(update_fields=["problem", "plan", "state", "finished_at", "percent", "progress_text"])
    return True


@transaction.atomic
def fail_plan(*, week_plan: WeekPlan, why: str, at: datetime) -> WeekPlan:
    """Nothing came of it; `why` is for whoever asked. Only while it is thought about; the row as it stands then."""
    row = week_plan.locked()
    if row.state == WeekPlanState.THINKING:
        row.state, row.failure, row.finished_at = WeekPlanState.FAILED, why, at
        row.save(update_fields=["state", "failure", "finished_at"])
    return row
