"""Orders: what to order and why, what is on order, what came of it."""

from decimal import Decimal
from uuid import uuid4

from django.db.models import Exists, OuterRef, Prefetch, prefetch_related_objects
from rest_framework import serializers

from trimops.accounts.actions import Action
from trimops.api.asked import Words, YesOrNo
from trimops.api.fields import Day, Moment, many
from trimops.api.kinds import RowApi, RowsApi, StepApi, ToldApi
from trimops.api.op import Filter, Op, Said, Shape
from trimops.api.refusals import CannotBeMeant
from trimops.api.rows import RowContent, RowField
from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope
from visits.api.kit.picked import KeyField
from visits.api.kit.stock import amount
from visits.domain.kit.order_why import Pressing
from visits.models import StockPlace, SupplyLine, SupplyOrder
from visits.selectors.kit.order_list import order_list
from visits.services.kit.call_off_order import call_off_order, expect_no_more
from visits.services.kit.place_order import MOST_PACKS, OrderWord, WantedLine, place_order
from visits.services.kit.receive_supply import ArrivedLine, receive_supply
from visits.services.kit.stock_word import StockWord

MOST_LINES = 200


class OrderRowTold(serializers.Serializer):  # type: ignore[type-arg]
    """A consumable: how pressing, how many packs are advised, why, by when, and at what cost without tax."""

    consumable = serializers.IntegerField(source="consumable.pk")
    name = serializers.CharField()
    supplier = serializers.CharField(source="consumable.supplier", allow_blank=True)
    pressing = serializers.ChoiceField([each.value for each in Pressing])
    packs = serializers.IntegerField()
    why = serializers.CharField(allow_blank=True)
    order_by = serializers.DateField(source="forecast.order_by", allow_null=True)
    there = amount()
    cost = serializers.DecimalField(max_digits=14, decimal_places=2, allow_null=True)


class OrderListTold(serializers.Serializer):  # type: ignore[type-arg]
    """What to order. `seen` are the open order lines that it knows of: hand them back when you note an order."""

    items = OrderRowTold(many=True)
    seen = serializers.ListField(child=serializers.IntegerField())


class OrderListApi(ToldApi):
    """What the forecast of use advises to order today, and what may go along."""

    ops = {"get": Op(Action.SEE_KIT, "read_order_list", "What to order", shows=OrderListTold)}

    def told(self) -> Shape:
        found = order_list(self.scope, local_day(self.now, self.seat.business.zone))
        return {"items": [row for each in found.suppliers for row in each.rows], "seen": found.seen}


class SupplyLineShown(RowContent):
    """So much of a consumable on an order. `closed_at`: all came, or the rest will not."""

    class Meta:
        model = SupplyLine
        fields = ["id", "consumable", "quantity", "arrived", "expected_on", "closed_at"]


class SupplyOrderShown(RowContent):
    """What was ordered from one supplier at one time."""

    lines = SupplyLineShown(many=True, read_only=True)

    class Meta:
        model = SupplyOrder
        fields = ["id", "supplier", "ordered_at", "mailed_to", "note", "called_off_at", "lines"]

    def to_representation(self, instance: SupplyOrder) -> Said:
        prefetch_related_objects([instance], lines_of(self.context["scope"]))
        told: Said = super().to_representation(instance)
        return told


def lines_of(scope: Scope) -> "Prefetch[Shape]":
    return Prefetch("lines", queryset=SupplyLine.objects.within(scope).order_by("pk"))


class WantedWord(serializers.Serializer):  # type: ignore[type-arg]
    """So many whole packs of a consumable."""

    consumable = KeyField()
    packs = serializers.IntegerField(min_value=1, max_value=MOST_PACKS)


class SupplyOrderWord(serializers.Serializer):  # type: ignore[type-arg]
    """What was ordered. `seen`: as the order list had it. `mailed_to`: where you sent it; nothing is sent by this."""

    supplier = serializers.CharField(max_length=120, required=False, allow_blank=True)
    lines = many(WantedWord, least=1, most=MOST_LINES)
    seen = serializers.ListField(child=KeyField(), required=False, max_length=1000)
    mailed_to = serializers.EmailField(max_length=254, required=False, allow_blank=True)
    note = serializers.CharField(max_length=200, required=False, allow_blank=True)


class SupplyOrdersApi(RowsApi[SupplyOrder]):
    """The orders. One is noted as ordered, so that the list falls silent; it is refused (`ordered_meanwhile`) where
    somebody ordered one of the things and `seen` does not name that line. Ordering itself is between you and them."""

    model = SupplyOrder
    ops = {
        "get": Op(
            Action.SEE_KIT,
            "list_orders",
            "The orders",
            shows=SupplyOrderShown,
            lists=True,
            orders={"newest": ("-id",), "id": ("id",)},
            filters={"supplier": Filter(Words(max_length=120), "supplier__iexact")},
            query={"is_open": YesOrNo(help_text="Something of it is still to come.")},
        ),
        "post": Op(
            Action.KEEP_KIT,
            "place_order",
            "Note an order",
            takes=SupplyOrderWord,
            shows=SupplyOrderShown,
            status=201,
            repeats=True,
        ),
    }

    def rows(self) -> Shape:
        rows = super().rows().prefetch_related(lines_of(self.scope))
        if "is_open" not in self.asked:
            return rows
        lines = SupplyLine.objects.within(self.scope).filter(order=OuterRef("pk"), closed_at__isnull=True)
        return rows.filter(Exists(lines)) if self.asked["is_open"] else rows.filter(~Exists(lines))

    def make(self, content: Said) -> SupplyOrder:
        word = OrderWord(
            supplier=content.get("supplier", ""),
            lines=[WantedLine(line["consumable"], line["packs"]) for line in content["lines"]],
            uid=uuid4(),
            seen=frozenset(content.get("seen", ())),
            mailed_to=content.get("mailed_to", ""),
            note=content.get("note", ""),
        )
        return place_order(business=self.seat.business, word=word, at=self.now, by=self.seat.user)


class SupplyOrderApi(RowApi[SupplyOrder]):
    """One order, and what came of it."""

    model = SupplyOrder
    ops = {"get": Op(Action.SEE_KIT, "read_order", "One order", shows=SupplyOrderShown)}


class ArrivedWord(serializers.Serializer):  # type: ignore[type-arg]
    """What came of one line. `closes`: the rest will not come; with no quantity, nothing came of it."""

    line = KeyField()
    quantity = serializers.DecimalField(max_digits=10, decimal_places=2, min_value=Decimal(0))
    cost = serializers.DecimalField(
        max_digits=10, decimal_places=2, min_value=Decimal(0), required=False, allow_null=True
    )
    lot_code = serializers.CharField(max_length=60, required=False, allow_blank=True)
    expires_on = Day(required=False, allow_null=True)
    closes = serializers.BooleanField(required=False)


class ArrivalWord(serializers.Serializer):  # type: ignore[type-arg]
    """What came of an order, and where it lies. `at` left out: now."""

    place = RowField(StockPlace)
    at = Moment(required=False)
    note = serializers.CharField(max_length=200, required=False, allow_blank=True)
    lines = many(ArrivedWord, least=1, most=MOST_LINES)


class OrderArrivedApi(StepApi[SupplyOrder]):
    """What was ordered has come: it lies in stock. A line is closed when all of it has come; more than was ordered may
    come. Lines that are closed already are refused."""

    model = SupplyOrder
    ops = {
        "post": Op(
            Action.KEEP_KIT,
            "receive_order",
            "An order has come",
            takes=ArrivalWord,
            shows=SupplyOrderShown,
            repeats=True,
        )
    }

    def act(self, row: SupplyOrder, content: Said) -> SupplyOrder:
        rows = SupplyLine.objects.within(self.scope).filter(order=row).select_related("consumable", "order")
        known = rows.in_bulk([line["line"] for line in content["lines"]])
        faults = [
            (f"lines[{n}].line", "There is no such line on this order.")
            for n, line in enumerate(content["lines"])
            if line["line"] not in known
        ]
        if faults:
            raise CannotBeMeant(faults=faults)
        at, note = content.get("at", self.now), content.get("note", "")
        word = StockWord(at, self.now, self.seat.user, uuid4(), note)
        arrived = [_arrived(line, known[line["line"]]) for line in content["lines"]]
        receive_supply(order=row, place=content["place"], arrived=arrived, word=word)
        return self.row()


def _arrived(said: Said, line: SupplyLine) -> ArrivedLine:
    return ArrivedLine(
        line,
        said["quantity"],
        said.get("cost"),
        said.get("lot_code", ""),
        said.get("expires_on"),
        said.get("closes", False),
    )


class CallOffOrderWord(serializers.Serializer):  # type: ignore[type-arg]
    """Why nothing more of it will come."""

    because = serializers.CharField(max_length=120, required=False, allow_blank=True)


class OrderCalledOffApi(StepApi[SupplyOrder]):
    """Nothing more of the order is expected; what came already stays. Refused where all of it has come."""

    model = SupplyOrder
    ops = {
        "post": Op(
            Action.KEEP_KIT,
            "call_off_order",
            "Call an order off",
            takes=CallOffOrderWord,
            shows=SupplyOrderShown,
            repeats=True,
        )
    }

    def act(self, row: SupplyOrder, content: Said) -> SupplyOrder:
        call_off_order(order=row, because=content.get("because", ""), at=self.now)
        return self.row()


class OrderLineClosedApi(StepApi[SupplyLine]):
    """The rest of one line will not come: it is awaited no more and may be ordered elsewhere."""

    model = SupplyLine
    related = ("order",)
    ops = {
        "post": Op(
            Action.KEEP_KIT,
            "close_order_line",
            "Expect no more of a line",
            shows=SupplyLineShown,
            repeats=True,
        )
    }

    def act(self, row: SupplyLine, content: Said) -> SupplyLine:
        return expect_no_more(line=row, at=self.now)
