"""The evening: tonight's list, the wash, the forecast of the weather."""

from datetime import timedelta

from rest_framework import serializers
from rest_framework.serializers import DateField

from trimops.accounts.actions import Action
from trimops.api.asked import WholeNumber
from trimops.api.kinds import DoApi, RowsApi, ToldApi
from trimops.api.op import Filter, Op, Said, Shape
from trimops.api.rows import MOST_ID, RowContent
from visits.domain.kit.cold_day import DayWeather
from visits.domain.kit.next_wash import WashStand
from visits.domain.kit.tonight import EveningJob
from visits.models import TypedWeather, WashDown
from visits.selectors.kit.next_farm_wash import NextYard, next_farm_wash
from visits.selectors.kit.tonight import tonight
from visits.selectors.kit.wash_log import left_unwashed
from visits.services.kit.type_weather import type_weather

LATELY = timedelta(days=28)


class EveningTaskTold(serializers.Serializer):  # type: ignore[type-arg]
    """One thing to be done. `key` is the id of what it is about: of a van (`load`, `grind`, `warm`), a blade
    (`broken`), a visit (`wash`), a consumable (`order`, `date`) or a place (`count`)."""

    job = serializers.ChoiceField([each.value for each in EveningJob])
    name = serializers.CharField()
    what = serializers.CharField(allow_blank=True)
    why = serializers.CharField(allow_blank=True)
    key = serializers.IntegerField()
    number = serializers.IntegerField()


class EveningTold(serializers.Serializer):  # type: ignore[type-arg]
    """The evening's list in its order, with its title."""

    title = serializers.CharField()
    tasks = EveningTaskTold(many=True)


class TonightApi(ToldApi):
    """What to load, grind, wash, order, keep warm, count and use up before the vans go out."""

    ops = {"get": Op(Action.SEE_KIT, "read_tonight", "What to do this evening", shows=EveningTold)}

    def told(self) -> Shape:
        return tonight(self.seat.business, self.now)


class NextYardTold(serializers.Serializer):  # type: ignore[type-arg]
    """A van, the visit it goes to next, the one it comes from, and what is to be washed between them."""

    van = serializers.IntegerField()
    next_visit = serializers.IntegerField(allow_null=True)
    last_visit = serializers.IntegerField(allow_null=True)
    stand = serializers.ChoiceField([each.value for each in WashStand], allow_null=True)
    what = serializers.CharField(allow_blank=True)
    why = serializers.CharField(allow_blank=True)


class WashTold(serializers.Serializer):  # type: ignore[type-arg]
    """How each van goes to its next farm, and the visits of four weeks after which no wash-down is noted."""

    vans = NextYardTold(many=True)
    unwashed = serializers.ListField(child=serializers.IntegerField())


class WashApi(ToldApi):
    """Whether each van goes clean to its next farm. Where a herd has a serious infection or a restriction, ask that
    farm, its vet and your local rules before you drive on; nothing here stands for that."""

    ops = {"get": Op(Action.SEE_KIT, "read_wash_list", "What is to be washed", shows=WashTold)}

    def told(self) -> Shape:
        unwashed = left_unwashed(self.scope, self.now - LATELY)
        vans = [_yard(each) for each in next_farm_wash(self.scope, self.now)]
        return {"vans": vans, "unwashed": [visit.pk for visit in unwashed]}


def _yard(yard: NextYard) -> dict[str, object]:
    wash = yard.wash
    return {
        "van": yard.van.pk,
        "next_visit": yard.next.pk if yard.next else None,
        "last_visit": yard.before.pk if yard.before else None,
        "stand": wash.stand.value if wash else None,
        "what": wash.what if wash else "",
        "why": wash.why if wash else "",
    }


class WashDownShown(RowContent):
    """A wash-down as it was noted at the crush; substance, dilution and minutes are those of the product's label."""

    farm = serializers.IntegerField(source="visit.farm_id", read_only=True)
    van = serializers.IntegerField(source="visit.van_id", read_only=True, allow_null=True)

    class Meta:
        model = WashDown
        fields = [
            *(
                "id",
                "visit",
                "farm",
                "van",
                "substance",
                "dilution",
                "contact_minutes",
                "consumable",
                "litres",
            ),
            "washed_at",
        ]


class WashDownsApi(RowsApi[WashDown]):
    """The wash-downs, newest first. They are noted at the crush."""

    model = WashDown
    related = ("visit",)
    ops = {
        "get": Op(
            Action.SEE_KIT,
            "list_wash_downs",
            "The wash-downs",
            shows=WashDownShown,
            lists=True,
            orders={"newest": ("-washed_at",), "washed_at": ("washed_at",)},
            filters={
                "van": Filter(WholeNumber(min_value=1, max_value=MOST_ID), "visit__van_id"),
                "visit": Filter(WholeNumber(min_value=1, max_value=MOST_ID), "visit_id"),
            },
        )
    }


class WeatherWord(RowContent):
    """How cold and how warm a day is said to become."""

    class Meta:
        model = TypedWeather
        fields = ["day", "lowest_celsius", "highest_celsius"]


class WeatherShown(RowContent):
    """The forecast of a day as it was typed last."""

    class Meta:
        model = TypedWeather
        fields = ["id", "day", "lowest_celsius", "highest_celsius", "noted_at"]


class WeatherApi(DoApi, RowsApi[TypedWeather]):
    """The forecast of a day, typed from whatever source you trust; typed again it takes the place of the first. Today
    and the next 30 days can be typed."""

    model = TypedWeather
    ops = {
        "get": Op(
            Action.SEE_KIT,
            "list_weather",
            "Forecasts that were typed",
            shows=WeatherShown,
            lists=True,
            orders={"newest": ("-day",), "day": ("day",)},
            filters={
                "from": Filter(DateField(input_formats=["iso-8601"]), "day__gte"),
                "to": Filter(DateField(input_formats=["iso-8601"]), "day__lte"),
            },
        ),
        "post": Op(
            Action.COUNT_KIT,
            "type_weather",
            "Type the forecast of a day",
            takes=WeatherWord,
            shows=WeatherShown,
            repeats=True,
        ),
    }

    def act(self, content: Said) -> TypedWeather:
        weather = DayWeather(content["lowest_celsius"], content.get("highest_celsius"))
        return type_weather(
            business=self.seat.business,
            day=content["day"],
            weather=weather,
            at=self.now,
            by=self.seat.user,
        )
