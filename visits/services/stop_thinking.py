"""The planner is told to stop; it keeps the best week it has found so far."""

from datetime import datetime, timedelta

from django.db import transaction

from visits.models import WeekPlan, WeekPlanState

LONGEST_ANSWER = timedelta(minutes=2)
"""A planner that lives hears the word within seconds; after this it is taken to be gone."""


@transaction.atomic
def stop_thinking(*, week_plan: WeekPlan, at: datetime) -> WeekPlan:
    """Ask for it; a plan that is not being thought about any more is left as it is.

    Asked again when no answer has come for two minutes, the plan is given up: whoever thought about it is gone.
    """
    row = week_plan.locked()
    if row.state != WeekPlanState.THINKING:
        return row
    if row.stop_asked_at is None:
        row.stop_asked_at, row.progress_text = at, "Stopping with the best week so far"
    elif at - row.stop_asked_at > LONGEST_ANSWER:
        row.state, row.finished_at = WeekPlanState.FAILED, at
        row.failure = "Nobody is thinking about it any more: the planner went away. Ask for the plan again."
    row.save(update_fields=["stop_asked_at", "progress_text", "state", "failure", "finished_at"])
    return row
