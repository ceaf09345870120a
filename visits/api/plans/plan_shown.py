"""A plan of a week as the API shows it."""

from decimal import Decimal

from rest_framework import serializers

from trimops.accounts.models import Business
from trimops.api.op import Said
from trimops.api.rows import RowContent
from visits.models import WeekPlan
from visits.selectors.plan_holds import visit_key
from visits.selectors.plan_reasons import PlanReasons, reasons_of
from visits.selectors.plan_story import plan_story

Document = Said


class PlanShown(RowContent):
    """A plan: how far it is thought out, who asked, why. `is_replan`: it was asked for when the week broke."""

    asked_by = serializers.CharField(source="asker")
    is_replan = serializers.SerializerMethodField()

    class Meta:
        model = WeekPlan
        fields = [
            "id", "monday", "state", "percent", "progress_text", "failure", "made_by", "what_changed", "follows",
            "because", "is_replan", "asked_at", "asked_by", "stop_asked_at", "finished_at", "accepted_at",
        ]  # fmt: skip

    def get_is_replan(self, row: WeekPlan) -> bool:
        return row.change is not None


class PlanStopShown(serializers.Serializer):  # type: ignore[type-arg]
    """A stop: of a visit, or of an hour that is held (`held_hour`)."""

    visit = serializers.IntegerField(allow_null=True)
    held_hour = serializers.IntegerField(allow_null=True)
    arrive = serializers.DateTimeField()
    start = serializers.DateTimeField()
    finish = serializers.DateTimeField()
    travel_minutes = serializers.FloatField()
    km = serializers.FloatField()
    days_late = serializers.IntegerField()


class PlanMealShown(serializers.Serializer):  # type: ignore[type-arg]
    """When there is time for a meal."""

    start = serializers.DateTimeField()
    end = serializers.DateTimeField()


class PlanShiftShown(serializers.Serializer):  # type: ignore[type-arg]
    """A van's day. `shift` is its name for moving a stop into it; without stops it does not go out."""

    shift = serializers.CharField()
    van = serializers.IntegerField()
    day = serializers.DateField()
    leave = serializers.DateTimeField(allow_null=True)
    back = serializers.DateTimeField(allow_null=True)
    work_minutes = serializers.FloatField()
    km = serializers.FloatField()
    cows = serializers.IntegerField()
    meal = PlanMealShown(allow_null=True)
    stops = PlanStopShown(many=True)


class LeftOutShown(serializers.Serializer):  # type: ignore[type-arg]
    """A visit that the plan leaves out, and why."""

    visit = serializers.IntegerField(allow_null=True)
    reason = serializers.CharField()
    detail = serializers.CharField()


class PlanCostShown(serializers.Serializer):  # type: ignore[type-arg]
    """Money of the business. `bound`: no plan that does as much reckons to less; null where that was not proven."""

    total = serializers.DecimalField(14, 2)
    late = serializers.DecimalField(14, 2)
    out = serializers.DecimalField(14, 2, help_text="What leaving visits out is reckoned at.")
    bound = serializers.DecimalField(14, 2, allow_null=True)
    seconds = serializers.FloatField(help_text="Thought about it.")


class CostPointShown(serializers.Serializer):  # type: ignore[type-arg]
    """What the best week so far cost after so many seconds."""

    seconds = serializers.FloatField()
    cost = serializers.DecimalField(14, 2)


class PlanWhyShown(serializers.Serializer):  # type: ignore[type-arg]
    """Why a visit is where it is, or what would make room for it."""

    visit = serializers.IntegerField()
    is_left_out = serializers.BooleanField()
    sentences = serializers.ListField(child=serializers.CharField())


class PlanPromiseShown(serializers.Serializer):  # type: ignore[type-arg]
    """What keeping one promise costs."""

    farm = serializers.CharField()
    sentence = serializers.CharField()


class PlanWayShown(serializers.Serializer):  # type: ignore[type-arg]
    """The plan itself (`rule` empty), or what a rule of thumb makes of the week."""

    rule = serializers.CharField(allow_blank=True)
    done = serializers.IntegerField()
    left_out = serializers.IntegerField()
    must_left_out = serializers.IntegerField()
    km = serializers.FloatField()
    hours = serializers.FloatField()
    days_late = serializers.IntegerField()
    money = serializers.DecimalField(14, 2)


class PlanReasonsShown(serializers.Serializer):  # type: ignore[type-arg]
    """Why the plan is as it is. Not `is_complete`: there was no time for all of it."""

    visits = PlanWhyShown(many=True)
    promises = PlanPromiseShown(many=True)
    ways = PlanWayShown(many=True)
    is_complete = serializers.BooleanField()


class WholePlanShown(PlanShown):
    """A plan with its days, what it leaves out and why, what it costs and how the cost fell. `cost` and `reasons` are
    null until they are known."""

    cost = PlanCostShown(allow_null=True)
    cost_history = CostPointShown(many=True)
    shifts = PlanShiftShown(many=True)
    left_out = LeftOutShown(many=True)
    reasons = PlanReasonsShown(allow_null=True)

    class Meta(PlanShown.Meta):
        fields = [*PlanShown.Meta.fields, "cost", "cost_history", "shifts", "left_out", "reasons"]


class WholePlan:
    """A stored plan with what is read out of it; reads as the row does."""

    def __init__(self, row: WeekPlan, business: Business) -> None:
        document: Document = row.plan or {}
        self.row = row
        self.cost = plan_story(row, business) if row.plan else None
        self.cost_history = [
            {"seconds": seconds, "cost": Decimal(str(cost)).quantize(Decimal(1)) / 100}
            for seconds, cost in row.cost_history
        ]
        self.shifts = [_shift(each) for each in document.get("shifts", ())]
        self.left_out = [
            {**each, "visit": visit_key(each["job"]) or None} for each in document.get("left_out", ())
        ]
        self.reasons = _reasons(reasons_of(row))

    def __getattr__(self, name: str) -> object:
        return getattr(self.row, name)


def _shift(kept: Document) -> Said:
    _, van, day = str(kept["id"]).split("-", 2)
    return {
        **kept,
        "shift": kept["id"],
        "van": int(van),
        "day": day,
        "leave": kept.get("leave"),
        "back": kept.get("return"),
        "meal": kept.get("meal"),
        "stops": [_stop(stop) for stop in kept["stops"]],
    }


def _stop(kept: Document) -> Said:
    kind, _, key = str(kept["job"]).partition("-")
    return {
        **kept,
        "visit": int(key) if kind == "visit" else None,
        "held_hour": int(key) if kind == "held" else None,
    }


def _reasons(known: PlanReasons | None) -> Said | None:
    if known is None:
        return None
    visits = [
        {"visit": key, "is_left_out": why.is_left_out, "sentences": why.sentences}
        for key, why in known.of_visits.items()
    ]
    return {
        "visits": visits,
        "promises": known.promises,
        "ways": known.ways,
        "is_complete": known.complete,
    }
