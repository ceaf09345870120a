"""An earlier plan of the week proposed again: the way back from a change."""

from datetime import datetime

from django.db import transaction

from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken
from visits.domain.planning.stored_week import PlanBreaksRules, document_of_week
from visits.models import WeekPlan, WeekPlanState
from visits.selectors.standing_plan import standing_plan
from visits.services.set_plans_aside import set_other_plans_aside


class PlanCannotComeBack(RuleBroken):
    """The earlier plan does not fit the week as it is now."""

    code = "plan_cannot_come_back"


@transaction.atomic
def bring_back_plan(*, week_plan: WeekPlan, at: datetime, by: User) -> WeekPlan:
    """Propose it again and set what was proposed meanwhile aside. The plan in the diary only sheds the proposal.

    PlanCannotComeBack where an hour that was promised or locked since does not fit it.
    """
    row = week_plan.locked()
    if row.plan is None or row.state not in (WeekPlanState.SET_ASIDE, WeekPlanState.ACCEPTED):
        raise PlanCannotComeBack("This plan is not one that was set aside.")
    standing = standing_plan(row, at)
    try:
        document_of_week(standing.text, standing.board, standing.week)
    except (ValueError, PlanBreaksRules):
        raise PlanCannotComeBack(
            "An hour was promised or locked since that does not fit this plan: plan the week again."
        ) from None
    set_other_plans_aside(week_plan=row)
    if row.state != WeekPlanState.ACCEPTED:
        row.state = WeekPlanState.PROPOSED
        row.save()
    return row
