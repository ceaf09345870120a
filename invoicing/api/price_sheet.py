"""A whole price list as it is said and shown."""

from datetime import date, time
from decimal import Decimal

from rest_framework import serializers

from invoicing.api.money import Amount, several
from invoicing.domain.out_of_hours import UsualHours
from invoicing.domain.price_steps import PriceStep, StepRule
from invoicing.domain.pricing import PriceItem
from invoicing.domain.travel_charge import Band, DistanceUnit, TravelRule, TravelTerms
from invoicing.models import PriceList
from invoicing.services.set_prices import ItemPrice, PriceSheet
from trimops.api.fields import ClockTime, Day, OneOf
from trimops.api.op import Said
from trimops.api.refusals import CannotBeMeant

MOST_STEP = 999_999
WEEK = 7


def price_said() -> Amount:
    """Without tax, below a million."""
    return Amount(digits=10, help_text="Without tax.")


class StepWord(serializers.Serializer):  # type: ignore[type-arg]
    """From that many on, each costs so much."""

    from_quantity = serializers.IntegerField(min_value=1, max_value=MOST_STEP)
    unit_price = price_said()


class ItemWord(serializers.Serializer):  # type: ignore[type-arg]
    """One item with its tax and its steps, the first from 1 on."""

    item = OneOf(PriceItem)
    tax_code = serializers.CharField(max_length=20)
    steps = several(StepWord, min_length=1, max_length=20)

    def validate_steps(self, steps: list[Said]) -> list[Said]:
        starts = [step["from_quantity"] for step in steps]
        if starts[0] != 1 or starts != sorted(set(starts)):
            raise serializers.ValidationError("The first begins at 1, each further one above the one before.")
        return steps


class BandWord(serializers.Serializer):  # type: ignore[type-arg]
    """Travel up to that distance from the base, one way; null: beyond all others."""

    up_to = Amount(digits=5, places=1, least=Decimal("0.1"), allow_null=True)
    price = price_said()


class PriceListWord(serializers.Serializer):  # type: ignore[type-arg]
    """Prices from a day on, without tax, until the next list begins."""

    name = serializers.CharField(max_length=60)
    valid_from = Day()
    prices = several(ItemWord, max_length=20)
    step_rule = OneOf(StepRule, default=StepRule.WHOLE, help_text="How steps count.")
    travel_rule = OneOf(TravelRule, default=TravelRule.NONE)
    travel_unit = OneOf(DistanceUnit, default=DistanceUnit.KILOMETRE)
    bands = several(BandWord, default=list, max_length=20, help_text="The nearest first.")
    minimum_charge = Amount(
        digits=10, places=2, required=False, help_text="A visit is not charged less, before tax."
    )
    guarantee_days = serializers.IntegerField(
        min_value=0, max_value=365, default=0, help_text="Re-checks within so many days of a trim are free."
    )
    usual_from = ClockTime(default=None, allow_null=True, help_text="Before it a visit is out of hours.")
    usual_until = ClockTime(default=None, allow_null=True, help_text="After it a visit is out of hours.")
    usual_weekdays = serializers.ListField(
        child=serializers.IntegerField(min_value=1, max_value=WEEK),
        min_length=1,
        max_length=WEEK,
        required=False,
        help_text="Monday is 1; on the others a visit is out of hours.",
    )

    def validate_prices(self, prices: list[Said]) -> list[Said]:
        if len({one["item"] for one in prices}) < len(prices):
            raise serializers.ValidationError("An item stands here twice: give it steps instead.")
        return prices

    def validate_bands(self, bands: list[Said]) -> list[Said]:
        edges = [band["up_to"] for band in bands]
        closed = [edge for edge in edges if edge is not None]
        if None in edges[:-1] or closed != sorted(set(closed)):
            raise serializers.ValidationError(
                "Each reaches farther than the one before; the one beyond all comes last."
            )
        return bands


class PriceListShown(PriceListWord):
    """A price list."""

    id = serializers.IntegerField(read_only=True)

    def to_representation(self, instance: PriceList) -> dict[str, object]:
        found: dict[str, object] = super().to_representation({"id": instance.pk, **said_by(instance)})
        return found


def said_by(row: PriceList) -> Said:
    """A list that stands (of `whole_lists`) as it could be said again."""
    items: dict[str, Said] = {}
    for one in row.prices.all():
        item = items.setdefault(
            one.item, {"item": PriceItem(one.item), "tax_code": one.tax_code, "steps": []}
        )
        item["steps"].append({"from_quantity": one.from_quantity, "unit_price": one.unit_price})
    return {
        "name": row.name,
        "valid_from": row.valid_from,
        "prices": list(items.values()),
        "step_rule": StepRule(row.step_rule),
        "travel_rule": TravelRule(row.travel_rule),
        "travel_unit": DistanceUnit(row.travel_unit),
        "bands": [{"up_to": band.up_to, "price": band.price} for band in row.travel_bands.all()],
        "minimum_charge": row.minimum_charge,
        "guarantee_days": row.guarantee_days,
        "usual_from": row.usual_from,
        "usual_until": row.usual_until,
        "usual_weekdays": [int(day) for day in row.usual_weekdays],
    }


def sheet_of(said: Said) -> PriceSheet:
    """What was said, as the service takes it. CannotBeMeant where the usual hours end before they begin."""
    valid_from: date = said["valid_from"]
    start: time | None = said["usual_from"]
    end: time | None = said["usual_until"]
    if start and end and start >= end:
        raise CannotBeMeant(faults=[("usual_until", "The usual hours end after they begin.")])
    days = "".join(str(day) for day in sorted(set(said.get("usual_weekdays", range(1, 6)))))
    bands = tuple(Band(band["up_to"], band["price"]) for band in said["bands"])
    return PriceSheet(
        name=said["name"],
        valid_from=valid_from,
        prices=tuple(_item(one) for one in said["prices"]),
        step_rule=said["step_rule"],
        travel=TravelTerms(said["travel_rule"], said["travel_unit"], bands),
        minimum=said.get("minimum_charge", Decimal(0)),
        guarantee_days=said["guarantee_days"],
        hours=UsualHours(start, end, days),
    )


def _item(said: Said) -> ItemPrice:
    steps = tuple(PriceStep(step["from_quantity"], step["unit_price"]) for step in said["steps"])
    return ItemPrice(said["item"], steps, said["tax_code"])
