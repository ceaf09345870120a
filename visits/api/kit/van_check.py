"""The van the evening before: what tomorrow needs, what is in it, what is put in."""

from datetime import date, timedelta
from decimal import Decimal
from uuid import uuid4

from rest_framework import serializers

from trimops.accounts.actions import Action
from trimops.api.fields import Day, many
from trimops.api.kinds import StepApi, ToldApi
from trimops.api.op import Op, Said, Shape
from trimops.api.refusals import CannotBeMeant
from trimops.api.rows import MOST_ID
from trimops.kernel.clock import local_day
from visits.api.kit.picked import KeyField, paths, picked
from visits.api.kit.stock import amount
from visits.api.kit.stock_moves import MOST_LINES, Dated, MovementsTold
from visits.models import Consumable, Van
from visits.selectors.kit.last_load import last_load
from visits.selectors.kit.van_check import VanCheck, van_check
from visits.services.kit.load_van import LoadWord, WantedLoad, load_van
from visits.services.kit.stock_word import StockWord

FURTHEST = timedelta(days=366)


class CheckLine(serializers.Serializer):  # type: ignore[type-arg]
    """A consumable of the day: what it is expected to use, what the ledger has in van and store, what to put in, what
    neither has, what in the van is past its date then, and the chance of running short once it is loaded."""

    consumable = serializers.IntegerField()
    name = serializers.CharField()
    unit = serializers.CharField()
    expected = amount()
    in_van = amount()
    in_store = amount()
    load = amount()
    missing = amount()
    past_date = amount()
    chance_short = serializers.FloatField()


class VanCheckTold(serializers.Serializer):  # type: ignore[type-arg]
    """`day` null: no visit is booked for the van. `sure`: the chance, at least, that nothing runs short once it is
    loaded. `cold`: what does not stand the day's cold. `seen`: hand it back when you say what was loaded."""

    van = serializers.IntegerField()
    day = serializers.DateField(allow_null=True)
    farms = serializers.IntegerField()
    cows = serializers.IntegerField()
    sure = serializers.FloatField()
    cold = serializers.ListField(child=serializers.CharField())
    seen = serializers.IntegerField()
    items = CheckLine(many=True)


class VanCheckApi(ToldApi):
    """What a van needs for its next day with visits, or for `day`."""

    also_refuses = (422,)
    ops = {
        "get": Op(
            Action.SEE_KIT,
            "read_van_check",
            "What a van needs for a day",
            shows=VanCheckTold,
            query={
                "day": serializers.DateField(
                    input_formats=["iso-8601"],
                    help_text="Today or a day of the year to come; left out: its next with visits.",
                )
            },
        )
    }

    def told(self) -> Shape:
        van = self.fetch(Van, self.kwargs["pk"], "business")
        today, day = local_day(self.now, van.business.zone), self.asked.get("day")
        _refuse_day(day, today)
        check = van_check(self.scope, van, day, today)
        return {
            "van": van.pk,
            "day": check.day,
            "farms": check.farms,
            "cows": check.cows,
            "sure": check.sure,
            "cold": check.cold,
            "seen": last_load(van),
            "items": _lines(check),
        }


def _refuse_day(day: date | None, today: date) -> None:
    if day is not None and not today <= day <= today + FURTHEST:
        raise CannotBeMeant(faults=[("query.day", "Ask for today or a day of the year to come.")])


def _lines(check: VanCheck) -> list[dict[str, object]]:
    return [
        {
            "consumable": row.consumable.pk,
            "name": row.name,
            "unit": row.unit.value,
            "expected": row.expected,
            "in_van": row.van_balance,
            "in_store": row.store_balance,
            "load": row.load.load,
            "missing": row.load.missing,
            "past_date": sum((portion.quantity for portion in row.load.stale), Decimal(0)),
            "chance_short": row.chance_short,
        }
        for row in check.rows
    ]


class LoadLine(serializers.Serializer):  # type: ignore[type-arg]
    """So much of a consumable is put in, in its unit."""

    consumable = KeyField()
    quantity = serializers.DecimalField(max_digits=10, decimal_places=2, min_value=Decimal("0.01"))


class LoadTaken(Dated):
    """What is put in for the work on `day`. `seen`: as the check had it. `is_really_there`: said where the ledger does
    not know of so much."""

    day = Day()
    seen = serializers.IntegerField(min_value=0, max_value=MOST_ID, required=False, allow_null=True)
    items = many(LoadLine, least=1, most=MOST_LINES)
    is_really_there = serializers.BooleanField(required=False)


class LoadVanApi(StepApi[Van]):
    """The van is loaded from the store, oldest dates first, nothing that is past its date on the day. Refused
    (`loaded_meanwhile`) where somebody loaded it since `seen`, and (`more_than_is_there`) where the ledger has less."""

    model = Van
    related = ("business",)
    ops = {
        "post": Op(
            Action.KEEP_KIT,
            "load_van",
            "A van was loaded",
            takes=LoadTaken,
            shows=MovementsTold,
            repeats=True,
        )
    }

    def act(self, row: Van, content: Said) -> Shape:
        items = picked(Consumable, self.scope, paths("items", "consumable", content["items"]))
        loads = [WantedLoad(items[line["consumable"]], line["quantity"]) for line in content["items"]]
        word = StockWord(
            content.get("at", self.now), self.now, self.seat.user, uuid4(), content.get("note", "")
        )
        load = LoadWord(content["day"], loads, content.get("seen"), content.get("is_really_there", False))
        return {"lines": load_van(van=row, load=load, word=word)}
