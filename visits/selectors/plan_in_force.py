"""Which plan of a week counts: the one proposed, else the one in the diary."""

from datetime import date

from trimops.kernel.scope import Scope
from visits.models import WeekPlan, WeekPlanState

SHOWN = (WeekPlanState.PROPOSED, WeekPlanState.ACCEPTED)


def plan_in_force(scope: Scope, monday: date) -> WeekPlan | None:
    """The week's plan that is shown and worked on, or None. At most one is proposed at a time."""
    rows = WeekPlan.objects.within(scope).filter(monday=monday, state__in=SHOWN, plan__isnull=False)
    found = list(rows.select_related("business", "asked_by").order_by("-asked_at", "-id"))
    proposed = [row for row in found if row.state == WeekPlanState.PROPOSED]
    return next(iter(proposed or found), None)


def earlier_plans(scope: Scope, shown: WeekPlan, most: int = 12) -> list[WeekPlan]:
    """Other plans of the week that were once proposed, newest first: to compare with, or to bring back."""
    states = (*SHOWN, WeekPlanState.SET_ASIDE)
    rows = WeekPlan.objects.within(scope).filter(monday=shown.monday, state__in=states, plan__isnull=False)
    return list(rows.exclude(pk=shown.pk).select_related("asked_by").order_by("-asked_at", "-id")[:most])
