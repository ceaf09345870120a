"""Rates that law or a tax office sets, put down by their day: the reference rate, the mileage allowance."""

from decimal import Decimal

from rest_framework import serializers

from invoicing.api.money import Amount, Kept
from invoicing.domain.mileage_allowance import AllowanceRate
from invoicing.domain.travel_charge import DistanceUnit
from invoicing.models import MileageRate, ReferenceRate
from invoicing.services.set_mileage_rate import set_mileage_rate
from invoicing.services.set_reference_rate import set_reference_rate
from trimops.accounts.actions import Action
from trimops.api.fields import Day, OneOf
from trimops.api.kinds import RowApi, RowsApi
from trimops.api.op import Op, Said

NEWEST = {"newest": ("-valid_from", "-id"), "id": ("id",)}
MOST_DISTANCE = 1_000_000


class ReferenceRateWord(serializers.Serializer):  # type: ignore[type-arg]
    """The rate of the central bank from a day on; a second one for the day takes its place."""

    valid_from = Day()
    percent = Amount(digits=6, places=3, least=None, help_text="A year; it may be below nought.")
    source = serializers.CharField(  # type: ignore[assignment]
        max_length=200, help_text="Where it was read: printed beside the interest."
    )


class ReferenceRateShown(Kept):
    """The rate that late-payment law refers to, from a day on."""

    class Meta:
        model = ReferenceRate
        fields = ["id", "valid_from", "percent", "source"]
        read_only_fields = fields


class MileageRateWord(serializers.Serializer):  # type: ignore[type-arg]
    """The allowance from a day on: so much up to a yearly distance, then the other rate."""

    valid_from = Day()
    unit = OneOf(DistanceUnit)
    first_rate = Amount(digits=8, help_text="For each, in the business's currency.")
    up_to = serializers.IntegerField(
        min_value=1,
        max_value=MOST_DISTANCE,
        default=None,
        allow_null=True,
        help_text="In a year; null: no limit.",
    )
    then_rate = Amount(digits=8, required=False, help_text="For each after that; nought, if nothing is said.")
    year_begins_month = serializers.IntegerField(min_value=1, max_value=12, default=1)
    year_begins_day = serializers.IntegerField(min_value=1, max_value=31, default=1)
    source = serializers.CharField(  # type: ignore[assignment]
        max_length=200, help_text="Where it was read."
    )


class MileageRateShown(Kept):
    """The allowance from a day on."""

    class Meta:
        model = MileageRate
        fields = [
            *("id", "valid_from", "unit", "first_rate", "up_to", "then_rate"),
            *("year_begins_month", "year_begins_day", "source"),
        ]
        read_only_fields = fields


class ReferenceRatesApi(RowsApi[ReferenceRate]):
    """Reference rates. Reminders that went out keep the figures they went out with.

    Refused: `rate_refused`.
    """

    model = ReferenceRate
    ops = {
        "get": Op(
            Action.SEE_MONEY,
            "list_reference_rates",
            "The reference rates",
            shows=ReferenceRateShown,
            lists=True,
            orders=NEWEST,
        ),
        "post": Op(
            Action.KEEP_MONEY,
            "set_reference_rate",
            "A reference rate from a day on",
            takes=ReferenceRateWord,
            shows=ReferenceRateShown,
            status=201,
            repeats=True,
        ),
    }

    def make(self, content: Said) -> ReferenceRate:
        return set_reference_rate(business=self.seat.business, **content)


class ReferenceRateApi(RowApi[ReferenceRate]):
    """One reference rate: that from which statutory interest is reckoned, from a day on."""

    model = ReferenceRate
    ops = {"get": Op(Action.SEE_MONEY, "read_reference_rate", "One reference rate", shows=ReferenceRateShown)}


class MileageRatesApi(RowsApi[MileageRate]):
    """Mileage allowances; a second one for a day takes its place.

    Refused: `mileage_rate_refused`, `period_locked`.
    """

    model = MileageRate
    ops = {
        "get": Op(
            Action.SEE_MONEY,
            "list_mileage_rates",
            "The mileage allowances",
            shows=MileageRateShown,
            lists=True,
            orders=NEWEST,
        ),
        "post": Op(
            Action.KEEP_MONEY,
            "set_mileage_rate",
            "A mileage allowance from a day on",
            takes=MileageRateWord,
            shows=MileageRateShown,
            status=201,
            repeats=True,
        ),
    }

    def make(self, content: Said) -> MileageRate:
        up_to: int | None = content["up_to"]
        rate = AllowanceRate(
            content["valid_from"],
            content["unit"],
            content["first_rate"],
            None if up_to is None else Decimal(up_to),
            content.get("then_rate", Decimal(0)),
            (content["year_begins_month"], content["year_begins_day"]),
        )
        return set_mileage_rate(business=self.seat.business, rate=rate, source=content["source"])


class MileageRateApi(RowApi[MileageRate]):
    """One mileage allowance: what a distance is good for from a day on, by the tax office or whoever said it."""

    model = MileageRate
    ops = {"get": Op(Action.SEE_MONEY, "read_mileage_rate", "One allowance", shows=MileageRateShown)}
