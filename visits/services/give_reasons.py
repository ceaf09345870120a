"""A plan that has been found is given its reasons."""

import json
from collections.abc import Collection

from visits.domain.planning.reasons.week_reasons import week_reasons
from visits.models import WeekPlan

Parts = dict[str, list[dict[str, object]]]


def give_reasons(*, week_plan: WeekPlan) -> WeekPlan:
    """Work them out and keep them beside the plan; their time is bounded, and what is missing then is said in them.

    Nothing else of the row is written: it may have been accepted meanwhile. Without a plan nothing is done.
    """
    if week_plan.plan is None:
        return week_plan
    reasons = week_reasons(json.dumps(week_plan.problem), week_plan.plan)
    _say_by_hand(reasons, week_plan.left_by_hand)
    WeekPlan.objects.within(week_plan.scope).filter(pk=week_plan.pk).update(reasons=reasons)
    week_plan.reasons = reasons
    return week_plan


def _say_by_hand(reasons: dict[str, object], left: Collection[str]) -> None:
    """What a person took out is not out for its price: in the problem leaving it out was set to cost nothing."""
    left_out: Parts = reasons["left_out"]  # type: ignore[assignment]
    for job, ways in left_out.items():
        for way in ways if job in left else []:
            if way["code"] == "price":
                way["code"] = "by-hand"
