"""One stop of a plan: where else it could be and at what price, moved, taken out, locked."""

from decimal import Decimal

from rest_framework import serializers

from trimops.accounts.actions import Action
from trimops.api.kinds import StepApi, ToldApi
from trimops.api.op import Op, Said
from trimops.api.rows import RowContent
from trimops.kernel.errors import NotFound
from visits.api.plans.plan_shown import PlanShown
from visits.models import PlanLock, Visit, WeekPlan, WeekPlanState
from visits.selectors.standing_plan import standing_plan
from visits.selectors.stop_places import PlaceView, StopPlaces, move_words, place_at, stop_places
from visits.services.lock_stop import LockOn, lock_stop
from visits.services.move_stop import PlanWasChanged, StopMove, move_stop
from visits.services.unlock_stop import unlock_stop

OPEN = (WeekPlanState.PROPOSED, WeekPlanState.ACCEPTED)


class PlaceShown(serializers.Serializer):  # type: ignore[type-arg]
    """One place: what it costs more (`price` in words, `money` of the business), or why it cannot be."""

    shift = serializers.CharField()
    position = serializers.IntegerField()
    day = serializers.DateField()
    van = serializers.CharField()
    after = serializers.CharField(allow_blank=True, help_text="The farm before it; empty: first stop.")
    is_here = serializers.BooleanField()
    start = serializers.DateTimeField(allow_null=True)
    finish = serializers.DateTimeField(allow_null=True)
    price = serializers.CharField(allow_blank=True)
    money = serializers.DecimalField(14, 2)
    why = serializers.CharField(allow_blank=True)


class PlacesShown(serializers.Serializer):  # type: ignore[type-arg]
    """Every place that the stop could have; what leaving it out saves (`out`), or why that cannot be (`out_why`)."""

    visit = serializers.IntegerField()
    places = PlaceShown(many=True)
    out = serializers.CharField(allow_blank=True)
    out_why = serializers.CharField(allow_blank=True)
    has_begun = serializers.BooleanField()


class MoveWord(serializers.Serializer):  # type: ignore[type-arg]
    """The place, by its shift and its position among the other stops; a null shift takes the stop out."""

    shift = serializers.CharField(max_length=60, allow_null=True)
    position = serializers.IntegerField(min_value=0, max_value=200, default=0)


class LockStopWord(serializers.Serializer):  # type: ignore[type-arg]
    """How tight: with its van on its day, or at its exact hour too."""

    on = serializers.ChoiceField([each.value for each in LockOn])


class LockShown(RowContent):
    """A visit that stays where it is when the week is planned; `start` null: at any hour of the day."""

    class Meta:
        model = PlanLock
        fields = ["id", "visit", "van", "day", "start", "at"]


class UnlockShown(serializers.Serializer):  # type: ignore[type-arg]
    """Whether there was a lock."""

    was_locked = serializers.BooleanField()


class StopPlacesApi(ToldApi):
    """Where else the stop could be, priced before anything is moved. Refused where what was promised since cannot be
    kept together with this plan (plan_does_not_hold)."""

    ops = {"get": Op(Action.PLAN_WEEKS, "list_stop_places", "The places of a stop", shows=PlacesShown)}
    also_refuses = (409,)

    def told(self) -> Said:
        plan = _found(self.fetch(WeekPlan, self.kwargs["pk"], "business"))
        visit = self.fetch(Visit, self.kwargs["visit_pk"], "farm")
        found = stop_places(standing_plan(plan, self.now), visit, self.seat.business)
        return {
            "visit": visit.pk,
            "places": [{**vars(place), "money": _major(place)} for place in found.places],
            "out": found.out,
            "out_why": found.out_why,
            "has_begun": found.has_begun,
        }


class StopApi(StepApi[WeekPlan]):
    """What is done with a stop: the plan, and the visit, that the address names."""

    model = WeekPlan
    related = ("business", "asked_by")

    def row(self) -> WeekPlan:
        self.visit = self.fetch(Visit, self.kwargs["visit_pk"], "farm")
        return super().row()


class MoveStopApi(StopApi):
    """The week with that one stop elsewhere, as a new version that is proposed; the one before is set aside and can be
    brought back. An accepted plan stays in the diary until the new one is accepted. Refused: a rule forbids the place
    (stop_cannot_go), or somebody was quicker (plan_was_changed)."""

    ops = {
        "post": Op(
            Action.PLAN_WEEKS, "move_stop", "Move a stop", takes=MoveWord, shows=PlanShown, repeats=True
        )
    }

    def act(self, row: WeekPlan, content: Said) -> WeekPlan:
        if _found(row).state not in OPEN:
            raise PlanWasChanged("This plan was set aside: look at the week again.")
        visit = self.visit
        shift, position = content["shift"] or "", content["position"]
        places: StopPlaces = stop_places(standing_plan(row, self.now), visit, self.seat.business)
        words = move_words(places, place_at(places, shift, position) if shift else None)
        move = StopMove(visit, shift, position, words)
        return move_stop(week_plan=row, move=move, at=self.now, by=self.seat.user)


class LockStopApi(StopApi):
    """The visit stays where the plan has it, also when the week is planned again. Refused where it is left out, or
    stays anyway (cannot_lock)."""

    ops = {
        "post": Op(
            Action.PLAN_WEEKS, "lock_stop", "Lock a stop", takes=LockStopWord, shows=LockShown, repeats=True
        )
    }

    def act(self, row: WeekPlan, content: Said) -> PlanLock:
        return lock_stop(
            week_plan=row, visit=self.visit, on=LockOn(content["on"]), at=self.now, by=self.seat.user
        )


class UnlockStopApi(StopApi):
    """Moving it and planning again are free once more."""

    ops = {"post": Op(Action.PLAN_WEEKS, "unlock_stop", "Take the lock off", shows=UnlockShown, repeats=True)}

    def act(self, row: WeekPlan, content: Said) -> dict[str, bool]:
        return {"was_locked": unlock_stop(visit=self.visit)}


def _found(plan: WeekPlan) -> WeekPlan:
    if plan.plan is None:
        raise NotFound("There is no plan yet.")
    return plan


def _major(place: PlaceView) -> Decimal:
    return Decimal(round(place.money)) / 100
