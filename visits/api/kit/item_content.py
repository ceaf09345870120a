"""What is said and shown of a consumable."""

from decimal import Decimal

from django.db.models import Prefetch, prefetch_related_objects
from rest_framework import serializers

from trimops.api.fields import OneOf, many
from trimops.api.op import Said, Shape
from trimops.api.rows import RowContent
from trimops.kernel.scope import Scope
from visits.domain.actions import BlockKind
from visits.domain.kit.stock_kinds import Unit, UsePer
from visits.domain.kit.typed_recipe import TypedLine
from visits.models import Consumable, UseRule

TOLD = [
    *(
        "name",
        "kind",
        "size",
        "unit",
        "is_active",
        "supplier",
        "supplier_email",
        "pack",
        "price",
        "lead_days",
    ),
    *("service_percent", "shelf_days", "lowest_celsius", "grams_per_ml", "active_substance", "dilution"),
    *("contact_minutes", "note"),
]


class RecipeWord(serializers.Serializer):  # type: ignore[type-arg]
    """So much is used with every `per` (blocks: of one kind, or of every kind). `unit` null: that of the consumable."""

    per = OneOf(UsePer)
    block_kind = OneOf(BlockKind, required=False, allow_null=True)
    quantity = serializers.DecimalField(max_digits=8, decimal_places=2, min_value=Decimal("0.01"))
    unit = OneOf(Unit, required=False, allow_null=True)


class RecipeShown(serializers.Serializer):  # type: ignore[type-arg]
    """One line of a recipe, in the unit of the consumable. `block_kind` is empty for blocks of every kind."""

    per = serializers.CharField()
    block_kind = serializers.CharField(allow_blank=True)
    quantity = serializers.DecimalField(max_digits=8, decimal_places=2)


class ConsumableWord(RowContent):
    """What may be said of a consumable. A change with `recipe` says the whole recipe anew."""

    recipe = many(RecipeWord, most=50, required=False)

    class Meta:
        model = Consumable
        fields = [*TOLD, "recipe"]
        extra_kwargs = {"price": {"min_value": Decimal(0)}}


class ConsumableShown(RowContent):
    """A consumable with its recipe."""

    recipe = RecipeShown(source="use_rules", many=True, read_only=True)

    class Meta:
        model = Consumable
        fields = ["id", *TOLD, "recipe"]

    def to_representation(self, instance: Consumable) -> Said:
        scope: Scope = self.context["scope"]
        prefetch_related_objects([instance], recipes_of(scope))
        told: Said = super().to_representation(instance)
        return told


def recipes_of(scope: Scope) -> "Prefetch[Shape]":
    """The recipes of consumables. One query for all of them."""
    return Prefetch("use_rules", queryset=UseRule.objects.within(scope).order_by("per", "block_kind"))


def typed_lines(said: list[Said]) -> list[TypedLine]:
    """The recipe as it was said."""
    return [
        TypedLine(line["per"], line["quantity"], line.get("unit"), line.get("block_kind")) for line in said
    ]
