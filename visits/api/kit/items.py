"""Consumables, and the places where they lie."""

from rest_framework import serializers

from trimops.accounts.actions import Action
from trimops.api.asked import Words, YesOrNo
from trimops.api.kinds import RowApi, RowsApi, set_fields
from trimops.api.op import Filter, Op, Said, Shape
from trimops.api.rows import RowContent
from visits.api.kit.item_content import ConsumableShown, ConsumableWord, recipes_of, typed_lines
from visits.domain.kit.stock_kinds import ConsumableKind
from visits.domain.kit.typed_recipe import TypedLine
from visits.models import Consumable, StockPlace
from visits.selectors.kit.kit_sheets import recipe_of
from visits.services.kit.save_consumable import save_consumable
from visits.services.kit.stock_places import stock_places_of


class StockPlaceShown(RowContent):
    """Where stock lies: the store (no van), or a van."""

    class Meta:
        model = StockPlace
        fields = ["id", "name", "van"]


class StockPlacesApi(RowsApi[StockPlace]):
    """The store, and every van that goes out or still holds something."""

    model = StockPlace
    ops = {
        "get": Op(Action.SEE_KIT, "list_stock_places", "Where stock lies", shows=StockPlaceShown, lists=True)
    }

    def rows(self) -> Shape:
        stock_places_of(self.scope)
        return super().rows()


class ConsumablesApi(RowsApi[Consumable]):
    """What is used up at the crush. One without a use any more is taken out of use by `is_active`; nothing is deleted,
    since the ledger stays."""

    model = Consumable
    ops = {
        "get": Op(
            Action.SEE_KIT,
            "list_consumables",
            "The consumables",
            shows=ConsumableShown,
            lists=True,
            orders={"name": ("name",), "id": ("id",)},
            filters={
                "is_active": Filter(YesOrNo(), "is_active"),
                "kind": Filter(serializers.ChoiceField([each.value for each in ConsumableKind]), "kind"),
                "name": Filter(Words(max_length=80, help_text="Part of the name."), "name__icontains"),
                "supplier": Filter(Words(max_length=120), "supplier__iexact"),
            },
        ),
        "post": Op(
            Action.KEEP_KIT,
            "add_consumable",
            "One more consumable",
            takes=ConsumableWord,
            shows=ConsumableShown,
            status=201,
            repeats=True,
        ),
    }

    def rows(self) -> Shape:
        return super().rows().prefetch_related(recipes_of(self.scope))

    def make(self, content: Said) -> Consumable:
        lines = typed_lines(content.pop("recipe", []))
        item = Consumable(business=self.seat.business)
        set_fields(item, content)
        return save_consumable(consumable=item, lines=lines)


class ConsumableApi(RowApi[Consumable]):
    """One consumable. Cows noted from now on go by a changed recipe; what was booked stays. The unit cannot change once
    anything was bought, used or counted in it."""

    model = Consumable
    ops = {
        "get": Op(Action.SEE_KIT, "read_consumable", "One consumable", shows=ConsumableShown),
        "patch": Op(
            Action.KEEP_KIT,
            "change_consumable",
            "Change a consumable",
            takes=ConsumableWord,
            shows=ConsumableShown,
            changes=True,
        ),
    }

    def change(self, row: Consumable, content: Said) -> Consumable:
        lines = typed_lines(content.pop("recipe")) if "recipe" in content else _as_it_is(row)
        set_fields(row, content)
        save_consumable(consumable=row, lines=lines)
        return self.row()


def _as_it_is(item: Consumable) -> list[TypedLine]:
    return [TypedLine(per, quantity, None, kind) for (per, kind), quantity in recipe_of(item).items()]
