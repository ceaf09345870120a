"""An hour held while a farm makes up its mind: held, taken, let go."""

from rest_framework import serializers

from farms.models import Farm
from trimops.accounts.actions import Action
from trimops.api.asked import YesOrNo
from trimops.api.fields import Day, Moment
from trimops.api.kinds import RowApi, RowsApi, StepApi
from trimops.api.op import Filter, Op, Said
from trimops.api.rows import MOST_ID, RowContent
from trimops.portal.api.wishes import AskingApi
from trimops.portal.services.hold_for_client import hold_for_client
from trimops.portal.services.take_for_client import take_for_client
from trimops.tenancy.querysets import TenantQuerySet
from visits.api.visit_shown import VisitShown
from visits.api.visits import id_filter
from visits.api.wishes import WishWord
from visits.models import HeldHour, HeldState, Visit
from visits.selectors.offer_again import AskedPlace
from visits.selectors.offer_week import Spot
from visits.services.hold_offer import OfferToHold, hold_offer
from visits.services.let_go_offer import let_go_offer
from visits.services.take_offer import take_offer

OFFICE_ONLY = ("moved_visit", "moved_van", "moved_start")


def a_key() -> serializers.IntegerField:
    """The id of something that may be gone, as the offer had it, or null."""
    return serializers.IntegerField(min_value=1, max_value=MOST_ID, allow_null=True, default=None)


class PlaceWord(serializers.Serializer):  # type: ignore[type-arg]
    """The place as it was offered. What moves for it is for staff to say; a farm client's is found anew."""

    van = serializers.IntegerField(min_value=1, max_value=MOST_ID)
    first = Moment()
    last = Moment()
    moved_visit = a_key()
    to_van = a_key()
    to_day = Day(allow_null=True, default=None)


class HoldWord(WishWord):
    """What is asked for, and the place that is to be held."""

    place = PlaceWord()


class HeldShown(RowContent):
    """An hour that is held: the farm is told a span, `first_start` to `last_start`; from `start` on the van is kept
    free. Which visit moves for it is null for a farm client, and so is a note of the office."""

    note = serializers.CharField(allow_null=True)
    is_in_force = serializers.SerializerMethodField()

    class Meta:
        model = HeldHour
        fields = [
            "id", "farm", "reason", "asked_by", "due_from", "due_until", "head_count", "corrective_count",
            "mobility_scale", "mobility_score", "note", "minutes", "van", "start", "first_start", "last_start",
            "moved_visit", "moved_van", "moved_start", "held_at", "until", "state", "is_in_force", "ended_at", "visit",
        ]  # fmt: skip

    def get_is_in_force(self, row: HeldHour) -> bool:
        return row.is_in_force(self.context["now"])

    def to_representation(self, instance: HeldHour) -> Said:
        told: Said = super().to_representation(instance)
        seat = self.context["seat"]
        if not seat.scope.is_farm_client:
            return told
        own = {} if instance.by_id == seat.user.pk else {"note": None}
        return {**told, **dict.fromkeys(OFFICE_ONLY), **own}


class HoldApi(AskingApi):
    """Holds one of the hours that were offered, for as long as the business's figures say. Of two who ask at once
    one is refused (offer_is_gone). A farm client holds one hour at a time: the one before is let go."""

    ops = {
        "post": Op(
            Action.ASK_VISITS,
            "hold_offer",
            "Hold an hour",
            takes=HoldWord,
            shows=HeldShown,
            status=201,
            repeats=True,
        )
    }

    def act(self, row: Farm, content: Said) -> HeldHour:
        wish, place = self.wish(content), _place_of(content["place"])
        if self.scope.is_farm_client:
            told = AskedPlace(place.van, place.first, place.last)
            return hold_for_client(farm=row, wish=wish, told=told, at=self.now, by=self.seat.user)
        return hold_offer(farm=row, offer=OfferToHold(wish, place), at=self.now, by=self.seat.user)


class HeldHoursApi(RowsApi[HeldHour]):
    """Hours that are held, and what became of others."""

    model = HeldHour
    ops = {
        "get": Op(
            Action.ASK_VISITS,
            "list_held_hours",
            "The hours held",
            shows=HeldShown,
            lists=True,
            orders={"start": ("start", "id"), "id": ("id",)},
            filters={
                "farm": id_filter("farm_id"),
                "state": Filter(serializers.ChoiceField(HeldState.choices), "state"),
            },
            query={"in_force": YesOrNo(help_text="true: only those that nobody else may have now.")},
        )
    }

    def rows(self) -> TenantQuerySet[HeldHour]:
        rows = super().rows()
        return HeldHour.objects.within(self.scope).in_force(self.now) if self.asked.get("in_force") else rows


class HeldHourApi(RowApi[HeldHour]):
    """One hour that is or was held: for whom, until when, what became of it."""

    model = HeldHour
    ops = {"get": Op(Action.ASK_VISITS, "read_held_hour", "One hour held", shows=HeldShown)}


class TakeWord(serializers.Serializer):  # type: ignore[type-arg]
    """Another start within the span that the farm was told; null: the hour held."""

    start = Moment(allow_null=True, default=None)


class TakeHeldHourApi(StepApi[HeldHour]):
    """The farm says yes: the hour becomes a confirmed visit, and whatever moves for it gets its new hour. Refused when
    it has run out (hour_is_not_held) or the week has changed so that it cannot be kept (offer_is_gone)."""

    model = HeldHour
    related = ("farm__business", "van", "business")
    ops = {
        "post": Op(
            Action.ASK_VISITS,
            "take_held_hour",
            "Take the hour",
            takes=TakeWord,
            shows=VisitShown,
            repeats=True,
        )
    }

    def act(self, row: HeldHour, content: Said) -> Visit:
        start = content["start"] or row.start
        if self.scope.is_farm_client:
            return take_for_client(held=row, start=start, at=self.now, by=self.seat.user)
        return take_offer(held=row, start=start, at=self.now, by=self.seat.user)


class LetGoHeldHourApi(StepApi[HeldHour]):
    """Anybody may have the hour again; nothing is planned by it."""

    model = HeldHour
    ops = {"post": Op(Action.ASK_VISITS, "let_go_held_hour", "Let it go", shows=HeldShown, repeats=True)}

    def act(self, row: HeldHour, content: Said) -> HeldHour:
        return let_go_offer(held=row, at=self.now)


def _place_of(word: Said) -> AskedPlace:
    known = word["to_van"] is not None and word["to_day"] is not None
    to = Spot(word["to_van"], word["to_day"]) if known else None
    return AskedPlace(word["van"], word["first"], word["last"], word["moved_visit"], to)
