"""What comes and goes: bought, moved, counted, written off."""

from decimal import Decimal
from uuid import uuid4

from rest_framework import serializers

from trimops.accounts.actions import Action
from trimops.api.fields import Day, Moment, OneOf, many
from trimops.api.kinds import DoApi
from trimops.api.op import Op, Said, Shape
from trimops.api.rows import RowField
from visits.api.kit.picked import KeyField, paths, picked
from visits.api.kit.stock import MovementShown, amount
from visits.domain.kit.stock_kinds import WriteOffReason
from visits.models import Consumable, StockLot, StockPlace
from visits.selectors.kit.count_result import count_result
from visits.services.kit.buy_stock import BoughtItem, buy_stock
from visits.services.kit.count_stock import count_stock
from visits.services.kit.move_stock import Way, move_stock
from visits.services.kit.stock_word import Amount, StockWord
from visits.services.kit.write_off_stock import write_off_stock

MOST_LINES = 200


class Dated(serializers.Serializer):  # type: ignore[type-arg]
    """`at` left out: now."""

    at = Moment(required=False)
    note = serializers.CharField(max_length=200, required=False, allow_blank=True)


class AmountLine(serializers.Serializer):  # type: ignore[type-arg]
    """So much of a consumable, in its unit; of one lot, or of those whose date is oldest."""

    consumable = KeyField()
    quantity = serializers.DecimalField(max_digits=10, decimal_places=2, min_value=Decimal(0))
    lot = KeyField(required=False, allow_null=True)


class BoughtLine(serializers.Serializer):  # type: ignore[type-arg]
    """One lot of a delivery. `cost` is of all of it, without tax; null: not known."""

    consumable = KeyField()
    quantity = serializers.DecimalField(max_digits=10, decimal_places=2, min_value=Decimal("0.01"))
    cost = serializers.DecimalField(
        max_digits=10, decimal_places=2, min_value=Decimal(0), required=False, allow_null=True
    )
    lot_code = serializers.CharField(max_length=60, required=False, allow_blank=True)
    expires_on = Day(required=False, allow_null=True)


class PurchaseWord(Dated):
    """A delivery, and where it was put."""

    place = RowField(StockPlace)
    supplier = serializers.CharField(max_length=120, required=False, allow_blank=True)
    items = many(BoughtLine, least=1, most=MOST_LINES)


class StockMoveWord(Dated):
    """From one place to another. `is_really_there`: said where the ledger does not know of so much."""

    from_place = RowField(StockPlace)
    to_place = RowField(StockPlace)
    items = many(AmountLine, least=1, most=MOST_LINES)
    is_really_there = serializers.BooleanField(required=False)


class StockCountWord(Dated):
    """What was counted at a place; what is not named was not counted, and nought is a word of its own."""

    place = RowField(StockPlace)
    items = many(AmountLine, least=1, most=MOST_LINES)


class WriteOffWord(Dated):
    """What will not be used any more, and why."""

    place = RowField(StockPlace)
    because = OneOf(WriteOffReason)
    items = many(AmountLine, least=1, most=MOST_LINES)
    is_really_there = serializers.BooleanField(required=False)


class MovementsTold(serializers.Serializer):  # type: ignore[type-arg]
    """The lines of the ledger that were written."""

    lines = MovementShown(many=True, read_only=True)


class CountedLine(serializers.Serializer):  # type: ignore[type-arg]
    """What was counted, against what the ledger had before."""

    consumable = serializers.IntegerField(source="consumable.pk")
    counted = amount()
    had = amount()


class CountTold(serializers.Serializer):  # type: ignore[type-arg]
    """What the count found, what differs first."""

    items = CountedLine(many=True, read_only=True)


class StockWordApi(DoApi):
    """What these have in common."""

    def word(self, content: Said) -> StockWord:
        # because: once only is kept by the Idempotency-Key already
        return StockWord(
            content.get("at", self.now), self.now, self.seat.user, uuid4(), content.get("note", "")
        )

    def amounts(self, lines: list[Said]) -> list[Amount]:
        items = picked(Consumable, self.scope, paths("items", "consumable", lines))
        lots = picked(StockLot, self.scope, paths("items", "lot", lines))
        return [
            Amount(items[line["consumable"]], line["quantity"], lots.get(line.get("lot") or 0))
            for line in lines
        ]


class PurchasesApi(StockWordApi):
    """A delivery is put into the store, or into a van. Each line becomes a lot; without `expires_on` its date follows
    from the days that the consumable keeps."""

    ops = {
        "post": Op(
            Action.KEEP_KIT,
            "buy_stock",
            "Stock was bought",
            takes=PurchaseWord,
            shows=MovementsTold,
            repeats=True,
        )
    }

    def act(self, content: Said) -> Shape:
        items = picked(Consumable, self.scope, paths("items", "consumable", content["items"]))
        bought = [
            BoughtItem(
                items[line["consumable"]],
                line["quantity"],
                line.get("cost"),
                line.get("lot_code", ""),
                line.get("expires_on"),
            )
            for line in content["items"]
        ]
        supplier = content.get("supplier", "")
        lines = buy_stock(place=content["place"], bought=bought, word=self.word(content), supplier=supplier)
        return {"lines": lines}


class StockMovesApi(StockWordApi):
    """Stock is moved. More than the ledger knows of is refused (`more_than_is_there`) unless it is said to be there."""

    ops = {
        "post": Op(
            Action.KEEP_KIT,
            "move_stock",
            "Stock was moved",
            takes=StockMoveWord,
            shows=MovementsTold,
            repeats=True,
        )
    }

    def act(self, content: Said) -> Shape:
        lines = move_stock(
            way=Way(content["from_place"], content["to_place"]),
            moved=self.amounts(content["items"]),
            word=self.word(content),
            is_really_there=content.get("is_really_there", False),
        )
        return {"lines": lines}


class StockCountsApi(StockWordApi):
    """A place was counted. At that moment so much lay there, whatever is heard later of what was used before."""

    ops = {
        "post": Op(
            Action.COUNT_KIT,
            "count_stock",
            "Stock was counted",
            takes=StockCountWord,
            shows=CountTold,
            repeats=True,
        )
    }

    def act(self, content: Said) -> Shape:
        place, word = content["place"], self.word(content)
        count_stock(place=place, counted=self.amounts(content["items"]), word=word)
        return {"items": count_result(self.scope, place.pk, word.uid)}


class WriteOffsApi(StockWordApi):
    """Stock leaves the ledger, which says why. More than it knows of is refused unless it is said to be there."""

    ops = {
        "post": Op(
            Action.KEEP_KIT,
            "write_off_stock",
            "Stock was written off",
            takes=WriteOffWord,
            shows=MovementsTold,
            repeats=True,
        )
    }

    def act(self, content: Said) -> Shape:
        lines = write_off_stock(
            place=content["place"],
            gone=self.amounts(content["items"]),
            because=content["because"],
            word=self.word(content),
            is_really_there=content.get("is_really_there", False),
        )
        return {"lines": lines}
