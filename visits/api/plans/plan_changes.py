"""Two plans of a week beside each other: what a new plan changes, and what any two differ in."""

from rest_framework import serializers

from trimops.accounts.actions import Action
from trimops.api.kinds import ToldApi
from trimops.api.op import Op, Said
from trimops.kernel.errors import NotFound
from visits.domain.planning.compare_plans import Change
from visits.domain.planning.replan.plan_in_force import Promise
from visits.models import WeekPlan, WeekPlanState
from visits.selectors.plan_comparison import ComparedVisit, PlanComparison, change_of_plan, plan_against

WAITING = (WeekPlanState.THINKING, WeekPlanState.FAILED)


class HourShown(serializers.Serializer):  # type: ignore[type-arg]
    """Where a plan has a visit."""

    start = serializers.DateTimeField()
    finish = serializers.DateTimeField()
    van = serializers.CharField()


class NewsShown(serializers.Serializer):  # type: ignore[type-arg]
    """What to tell the farm, drafted; nothing is sent by reading it. `is_told`: it was told this very hour since."""

    text = serializers.CharField()
    to = serializers.CharField(allow_blank=True)
    phone = serializers.CharField(allow_blank=True)
    is_told = serializers.BooleanField()


class ComparedShown(serializers.Serializer):  # type: ignore[type-arg]
    """What becomes of one visit. `asks`: it is confirmed and moves only with a yes. `is_fact`: it is so already."""

    visit = serializers.IntegerField(source="visit.pk")
    farm = serializers.CharField(source="visit.farm.name")
    change = serializers.ChoiceField([each.value for each in Change])
    before = HourShown(allow_null=True)
    after = HourShown(allow_null=True)
    promise = serializers.ChoiceField([each.value for each in Promise], allow_null=True)
    told = serializers.DateTimeField(allow_null=True, help_text="The hour that the farm counts on.")
    asks = serializers.BooleanField()
    is_fact = serializers.BooleanField()
    message = NewsShown(allow_null=True)


class SumShown(serializers.Serializer):  # type: ignore[type-arg]
    """One figure of both weeks."""

    before = serializers.DecimalField(14, 2)
    after = serializers.DecimalField(14, 2)


class ChangesShown(serializers.Serializer):  # type: ignore[type-arg]
    """What changes from the one week to the other. Not `same_list`: the two do not have the same visits to do, so their
    sums say little."""

    because = serializers.CharField(allow_blank=True)
    visits = ComparedShown(many=True)
    kinds = serializers.ListField(child=serializers.CharField())
    km = SumShown()
    hours = SumShown()
    money = SumShown()
    count = SumShown(help_text="Visits.")
    paid = serializers.DecimalField(14, 2, help_text="What the changes themselves are reckoned at.")
    same_list = serializers.BooleanField()


class PlanChangeApi(ToldApi):
    """What a plan made when the week broke changes against the diary as it was, and what to tell which farm. 404 while
    it is thought about, and for a plan that was made otherwise."""

    ops = {"get": Op(Action.SEE_WEEKS, "read_plan_change", "What the new plan changes", shows=ChangesShown)}

    def told(self) -> Said:
        plan = self.fetch(WeekPlan, self.kwargs["pk"])
        compared = None if plan.state in WAITING else change_of_plan(self.seat.business, plan)
        if compared is None:
            raise NotFound("There is nothing at this address.")
        return changes_told(compared, plan.because)


class PlanAgainstApi(ToldApi):
    """What one plan of a week changes against another of the same week (`other`)."""

    ops = {"get": Op(Action.SEE_WEEKS, "compare_plans", "Two plans of a week", shows=ChangesShown)}

    def told(self) -> Said:
        plan, before = (self.fetch(WeekPlan, self.kwargs[name]) for name in ("pk", "other"))
        if plan.plan is None or before.plan is None or plan.monday != before.monday:
            raise NotFound("There is nothing at this address.")
        return changes_told(plan_against(self.seat.business, plan, before), plan.because)


def changes_told(compared: PlanComparison, because: str) -> Said:
    """What `ChangesShown` reads."""
    rows: list[ComparedVisit] = [*compared.changed, *compared.stays]
    return {
        "because": because,
        "visits": rows,
        "kinds": compared.kinds,
        "km": compared.km,
        "hours": compared.hours,
        "money": compared.money,
        "count": compared.visits,
        "paid": compared.paid,
        "same_list": compared.same_list,
    }
