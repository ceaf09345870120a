"""When a farm milks: read, and set as a whole."""

from rest_framework import serializers

from farms.models import WEEKDAYS, Farm, Milking
from farms.services.set_milkings import DailyMilking, set_milkings
from trimops.accounts.actions import Action
from trimops.api.fields import ClockTime, many
from trimops.api.kinds import RowApi
from trimops.api.op import Op, Said

MOST_A_WEEK = 42


class MilkingLine(serializers.Serializer):  # type: ignore[type-arg]
    """One milking of one weekday (0 is Monday): from when on the farm's clock, and how many minutes it takes."""

    weekday = serializers.IntegerField(min_value=0, max_value=len(WEEKDAYS) - 1)
    starts = ClockTime()
    minutes = serializers.IntegerField(min_value=5, max_value=720)


class MilkingsWord(serializers.Serializer):  # type: ignore[type-arg]
    """All milkings of a week. None at all: nobody milks at fixed times (robots, dry stock)."""

    milkings = many(MilkingLine, most=MOST_A_WEEK)

    def validate_milkings(self, lines: list[Said]) -> list[Said]:
        if len({(line["weekday"], line["starts"]) for line in lines}) < len(lines):
            raise serializers.ValidationError("Two milkings begin at the same hour of the same day.")
        return lines


class MilkingsShown(serializers.Serializer):  # type: ignore[type-arg]
    """The milkings of a week in their order; working hours at the farm follow from them."""

    milkings = MilkingLine(many=True)

    def to_representation(self, instance: Farm) -> Said:
        rows = Milking.objects.within(self.context["scope"]).filter(farm=instance)
        return super().to_representation({"milkings": list(rows.order_by("weekday", "starts"))})


class MilkingsApi(RowApi[Farm]):
    """The milkings of a farm. A change says all of them anew."""

    model = Farm
    ops = {
        "get": Op(Action.SEE_FARMS, "read_milkings", "When a farm milks", shows=MilkingsShown),
        "patch": Op(
            Action.KEEP_FARMS,
            "set_milkings",
            "Say when a farm milks",
            takes=MilkingsWord,
            shows=MilkingsShown,
            changes=True,
        ),
    }

    def change(self, row: Farm, content: Said) -> Farm:
        if "milkings" in content:
            lines = content["milkings"]
            milkings = [DailyMilking(line["starts"], line["minutes"], (line["weekday"],)) for line in lines]
            set_milkings(farm=row, milkings=milkings)
        return row
