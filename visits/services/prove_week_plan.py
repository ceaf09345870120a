"""A plan that has been found is held against what nobody can undercut."""

import json

from django.db import transaction

from visits.domain.planning.exact.prove_plan import bound_of_plan
from visits.models import WeekPlan

PROVE_SECONDS = 60.0
"""How long the site tries: enough for a week of 40 visits on two cores that have nothing else to do."""


def prove_week_plan(*, week_plan: WeekPlan, seconds: float) -> WeekPlan:
    """Prove a bound for so long, and write it into the plan as `bound`, if it says more than the one there.

    Nothing else of the row is written; a plan that was changed meanwhile is left as it is. Without a plan nothing is
    done. Run as a job: it takes its seconds.
    """
    if week_plan.plan is None:
        return week_plan
    found = bound_of_plan(json.dumps(week_plan.problem), week_plan.plan, seconds)
    return week_plan if found is None else _write(week_plan, found)


@transaction.atomic
def _write(week_plan: WeekPlan, found: float) -> WeekPlan:
    row = week_plan.locked()
    plan = row.plan or {}
    known = plan.get("bound")
    if plan == week_plan.plan and (known is None or known < found):
        row.plan = {**plan, "bound": found}
        row.save(update_fields=["plan"])
    return row
