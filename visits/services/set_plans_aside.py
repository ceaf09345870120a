"""Of the proposals for a week only one stands."""

from django.db import transaction

from visits.models import WeekPlan, WeekPlanState


@transaction.atomic
def set_other_plans_aside(*, week_plan: WeekPlan) -> int:
    """Set every other proposal of its week aside; how many. What is in the diary stays there."""
    rows = WeekPlan.objects.within(week_plan.scope).filter(
        monday=week_plan.monday, state=WeekPlanState.PROPOSED
    )
    return rows.exclude(pk=week_plan.pk).update(state=WeekPlanState.SET_ASIDE)
