"""What lies where: the stock, the lots of one consumable, its ledger."""

from rest_framework import serializers

from trimops.accounts.actions import Action
from trimops.api.asked import WholeNumber
from trimops.api.fields import Moment
from trimops.api.kinds import RowsApi, ToldApi
from trimops.api.op import Filter, Op, Shape
from trimops.api.rows import MOST_ID, RowContent
from visits.domain.kit.stock_kinds import MovementKind
from visits.models import Consumable, StockMovement
from visits.selectors.kit.lots_left import lots_left
from visits.selectors.kit.stock_now import stock_now


def amount() -> serializers.DecimalField:
    """So much of a consumable, in its unit."""
    return serializers.DecimalField(max_digits=12, decimal_places=2)


class StockAtPlace(serializers.Serializer):  # type: ignore[type-arg]
    """What the ledger has at a place; below nought: more was taken than ever came, so count it."""

    place = serializers.IntegerField(source="place.pk")
    balance = amount()
    is_told = serializers.BooleanField(help_text="Whether anybody has said yet what lies there.")
    counted_at = Moment(allow_null=True)


class StockLine(serializers.Serializer):  # type: ignore[type-arg]
    """A consumable, at all places together and at each."""

    consumable = serializers.IntegerField(source="consumable.pk")
    name = serializers.CharField(source="consumable.name")
    unit = serializers.CharField(source="consumable.unit")
    balance = amount()
    places = StockAtPlace(many=True)


class StockTold(serializers.Serializer):  # type: ignore[type-arg]
    """The stock now."""

    items = StockLine(many=True)


class StockApi(ToldApi):
    """What lies where now, by the ledger: every consumable in use, and those out of use of which something is left."""

    ops = {"get": Op(Action.SEE_KIT, "read_stock", "What lies where", shows=StockTold)}

    def told(self) -> Shape:
        return {"items": stock_now(self.scope)}


class LotLine(serializers.Serializer):  # type: ignore[type-arg]
    """So much of a lot at a place. `lot` null: nobody knows which, nor its date."""

    place = serializers.IntegerField()
    lot = serializers.IntegerField(allow_null=True)
    code = serializers.CharField(allow_blank=True)
    expires_on = serializers.DateField(allow_null=True)
    quantity = amount()


class LotsTold(serializers.Serializer):  # type: ignore[type-arg]
    """The lots of one consumable, at each place the one to use first at the top."""

    lots = LotLine(many=True)


class LotsApi(ToldApi):
    """Which lots of a consumable lie where, as far as the ledger can tell."""

    ops = {"get": Op(Action.SEE_KIT, "read_lots", "The lots of a consumable", shows=LotsTold)}

    def told(self) -> Shape:
        item = self.fetch(Consumable, self.kwargs["pk"])
        return {
            "lots": [
                {
                    "place": each.place,
                    "lot": each.lot.pk if each.lot else None,
                    "code": each.lot.code if each.lot else "",
                    "expires_on": each.lot.expires_on if each.lot else None,
                    "quantity": each.quantity,
                }
                for each in lots_left(self.scope, item)
            ]
        }


class MovementShown(RowContent):
    """A line of the stock ledger; it is never changed, only followed by another. `quantity` is signed, in the unit."""

    class Meta:
        model = StockMovement
        fields = [
            *(
                "id",
                "consumable",
                "place",
                "kind",
                "quantity",
                "at",
                "lot",
                "cost",
                "use_of",
                "trim",
                "visit",
            ),
            *("because", "note", "noted_at"),
        ]


class LedgerApi(RowsApi[StockMovement]):
    """The ledger of one consumable, the newest first. `cost` is of all that was bought, without tax."""

    model = StockMovement
    ops = {
        "get": Op(
            Action.SEE_KIT,
            "list_ledger",
            "The ledger of a consumable",
            shows=MovementShown,
            lists=True,
            orders={"newest": ("-at",), "at": ("at",)},
            filters={
                "kind": Filter(serializers.ChoiceField([each.value for each in MovementKind]), "kind"),
                "place": Filter(WholeNumber(min_value=1, max_value=MOST_ID), "place_id"),
                "visit": Filter(WholeNumber(min_value=1, max_value=MOST_ID), "visit_id"),
            },
        )
    }

    def rows(self) -> Shape:
        item = self.fetch(Consumable, self.kwargs["pk"])
        return super().rows().filter(consumable=item)
