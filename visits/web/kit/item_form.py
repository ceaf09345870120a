"""The form of a consumable with its recipe."""

from collections.abc import Iterator, Mapping
from decimal import Decimal
from typing import TYPE_CHECKING, ClassVar

from django import forms
from django.forms.boundfield import BoundField
from django.http import QueryDict

from trimops.web.seen_form import SeenForm
from visits.domain.kit.kit_sheet import OCCASIONS, Occasion
from visits.domain.kit.stock_kinds import Unit
from visits.domain.kit.typed_recipe import TypedLine
from visits.models import Consumable
from visits.web.kit.quantity_field import QuantityField

if TYPE_CHECKING:
    ItemModelForm = forms.ModelForm[Consumable]
else:
    # Django's form classes take no type argument at run time.
    ItemModelForm = forms.ModelForm

LEAST_POURED = 10
TYPED_IN = [
    ("", "What it is counted in"),
    (Unit.GRAM.value, "g, by weight"),
    (Unit.ML.value, "ml, by volume"),
]


class ItemForm(SeenForm, ItemModelForm):
    """A recipe line left empty is none."""

    all_may_stay_empty = True

    pack = QuantityField(
        label="Bought in packs of",
        required=True,
        least="0.01",
        help_text="In what it is counted in: 40, 2000.",
    )
    price = QuantityField(label="Price of a pack", help_text="Without tax, for the order list.")
    service_percent = QuantityField(
        label="Chance of not running out, %",
        places=1,
        least="50",
        most="99.9",
        help_text="Empty: your own figure.",
    )
    lowest_celsius = QuantityField(
        label="Lowest working temperature, °C", places=1, least=None, help_text="As on the label."
    )
    grams_per_ml = QuantityField(
        label="One ml weighs, g",
        places=3,
        least="0.1",
        most="20",
        help_text="So that use by weight can be told in ml, or the other way round.",
    )
    contact_minutes = QuantityField(label="Contact time, minutes", places=1)
    typed_in = forms.ChoiceField(label="The amounts are typed in", choices=TYPED_IN, required=False)

    class Meta:
        model = Consumable
        fields = (
            *("name", "kind", "size", "unit", "is_active"),
            *("supplier", "supplier_email", "pack", "price", "lead_days", "service_percent"),
            *("shelf_days", "lowest_celsius", "grams_per_ml"),
            *("active_substance", "dilution", "contact_minutes", "note"),
        )
        labels: ClassVar = {
            "name": "What it is",
            "unit": "Counted in",
            "is_active": "In use",
            "supplier": "Bought from",
            "supplier_email": "Their mail address",
            "lead_days": "Days from order to arrival",
            "shelf_days": "Keeps so many days",
        }
        help_texts: ClassVar = {
            "lead_days": "",
            "shelf_days": "Where no date is on it.",
            "size": "130 mm, large …",
        }

    def __init__(
        self,
        data: QueryDict | None = None,
        *,
        instance: Consumable,
        recipe: Mapping[Occasion, Decimal] | None = None,
    ) -> None:
        super().__init__(data, instance=instance)
        self.names = dict(zip(OCCASIONS, (f"use_{n}" for n in range(len(OCCASIONS))), strict=True))
        for occasion, words in OCCASIONS.items():
            field = QuantityField(label=f"With every {words}")
            field.initial = (recipe or {}).get(occasion)
            self.fields[self.names[occasion]] = field

    def clean_name(self) -> str:
        name = " ".join(str(self.cleaned_data["name"]).split())
        others = Consumable.objects.within(self.instance.scope).exclude(pk=self.instance.pk)
        if others.filter(name__iexact=name).exists():
            raise forms.ValidationError(
                "That is on the list already: mend it there, or name this one otherwise."
            )
        return name

    def clean(self) -> dict[str, object]:
        super().clean()
        told = self.cleaned_data
        pack, unit = told.get("pack"), told.get("unit")
        if pack and unit in (Unit.ML, Unit.GRAM) and pack < LEAST_POURED:
            self.add_error(
                "pack", f"Say how much one tin, bag or canister holds: {pack:g} {unit} is hardly a pack."
            )
        return told

    def _fields(self, *names: str) -> list[BoundField]:
        return [self[name] for name in names]

    @property
    def what(self) -> list[BoundField]:
        return self._fields("name", "size", "kind", "unit")

    @property
    def buying(self) -> list[BoundField]:
        return self._fields("supplier", "supplier_email", "pack", "price", "lead_days", "service_percent")

    @property
    def keeping(self) -> list[BoundField]:
        return self._fields("shelf_days", "lowest_celsius", "grams_per_ml")

    @property
    def label_words(self) -> list[BoundField]:
        return self._fields("active_substance", "dilution", "contact_minutes")

    @property
    def uses(self) -> Iterator[BoundField]:
        yield from (self[name] for name in self.names.values())

    def lines(self) -> list[TypedLine]:
        """The recipe, once the form is valid."""
        told = self.cleaned_data
        typed = Unit(told["typed_in"]) if told["typed_in"] else None
        return [
            TypedLine(per, told[name], typed, block_kind)
            for (per, block_kind), name in self.names.items()
            if told[name]
        ]
