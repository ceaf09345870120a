"""The mileage log: what was driven for the business, mended by the odometer."""

from decimal import Decimal

from rest_framework import serializers

from invoicing.api.accounts import DaysWord
from invoicing.api.money import Amount, Kept, Why
from invoicing.domain.travel_charge import DistanceUnit
from invoicing.models import Journey
from invoicing.selectors.money_rules import money_rules
from invoicing.services.change_journey import change_journey
from invoicing.services.keep_day_journeys import keep_journeys
from invoicing.services.note_journey import FURTHEST, JourneyWord, note_journey
from trimops.accounts.actions import Action
from trimops.api.asked import WholeNumber, YesOrNo
from trimops.api.fields import Day
from trimops.api.kinds import DoApi, RowApi, RowsApi
from trimops.api.op import Filter, Op, Said
from trimops.api.rows import MOST_ID, RowField
from visits.models import Van


def distance_said() -> Amount:
    """Of one drive, in the business's unit, in tenths."""
    return Amount(
        digits=5, places=1, most=Decimal(FURTHEST), help_text="In the unit of the drive, in tenths."
    )


class DriveWord(serializers.Serializer):  # type: ignore[type-arg]
    """A drive that no visit tells of, in the unit of the business's money rules."""

    on = Day()
    from_words = serializers.CharField(max_length=120)
    to_words = serializers.CharField(max_length=120)
    purpose = serializers.CharField(max_length=200)
    distance = distance_said()
    van = RowField(Van, default=None, allow_null=True)


class MendWord(serializers.Serializer):  # type: ignore[type-arg]
    """How far it was, and why the figure is changed; both are needed. 0: it was no drive for the business."""

    distance = distance_said()
    because = Why("For instance: odometer 41210 to 41236.")


class JourneyShown(Kept):
    """One drive. `reckoned` is what stood there before it was mended."""

    class Meta:
        model = Journey
        fields = [
            *(
                "id",
                "on",
                "position",
                "van",
                "visit",
                "from_words",
                "to_words",
                "purpose",
                "distance",
                "unit",
            ),
            *("is_by_hand", "reckoned", "reckoned_source", "mended_because", "source", "noted_at"),
        ]
        read_only_fields = fields


class TakenInTold(serializers.Serializer):  # type: ignore[type-arg]
    """How many drives are new in the log."""

    new = serializers.IntegerField(min_value=0)


class JourneysApi(RowsApi[Journey]):
    """Drives for the business. Those of visits come in every night; others are noted.

    Refused: `journey_refused`, `period_locked`.
    """

    model = Journey
    ops = {
        "get": Op(
            Action.SEE_MONEY,
            "list_journeys",
            "The mileage log",
            shows=JourneyShown,
            lists=True,
            filters={
                "on_from": Filter(Day(), "on__gte"),
                "on_until": Filter(Day(), "on__lte"),
                "van": Filter(
                    WholeNumber(min_value=1, max_value=MOST_ID, help_text="Id of a van."), "van_id"
                ),
                "is_by_hand": Filter(YesOrNo(), "is_by_hand"),
            },
            orders={"newest": ("-on", "-id"), "id": ("id",)},
        ),
        "post": Op(
            Action.KEEP_MONEY,
            "note_journey",
            "Note a drive",
            takes=DriveWord,
            shows=JourneyShown,
            status=201,
            repeats=True,
        ),
    }

    def make(self, content: Said) -> Journey:
        unit = DistanceUnit(money_rules(self.scope).distance_unit)
        word = JourneyWord(**content, unit=unit)
        return note_journey(business=self.seat.business, word=word, at=self.now, by=self.seat.user)


class JourneyApi(RowApi[Journey]):
    """One drive. Mended, the old figure stays beside the new one.

    Refused: `journey_refused`, `period_locked`.
    """

    model = Journey
    ops = {
        "get": Op(Action.SEE_MONEY, "read_journey", "One drive", shows=JourneyShown),
        "patch": Op(
            Action.KEEP_MONEY,
            "mend_journey",
            "Mend a drive",
            takes=MendWord,
            shows=JourneyShown,
            changes=True,
        ),
    }

    def change(self, row: Journey, content: Said) -> Journey:
        told = {"distance": content.get("distance", row.distance), "because": content.get("because", "")}
        return change_journey(journey=row, **told, at=self.now, by=self.seat.user)


class TakeInApi(DoApi):
    """Drives of the days that are over are taken from the finished visits, as every night; doing it again adds none."""

    ops = {
        "post": Op(
            Action.KEEP_MONEY,
            "take_in_journeys",
            "Take drives from the visits",
            takes=DaysWord,
            shows=TakenInTold,
            repeats=True,
        )
    }

    def act(self, content: Said) -> object:
        days = {"first": content["first"], "last": content["last"]}
        return {"new": keep_journeys(business=self.seat.business, **days, at=self.now)}
