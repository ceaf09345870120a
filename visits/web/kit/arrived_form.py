"""Forms of what came of an order, and of the rest that will not come."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from uuid import uuid4

from django import forms
from django.forms.boundfield import BoundField
from django.http import QueryDict

from trimops.kernel.scope import Scope
from trimops.web.day_input import DAY
from visits.domain.kit.kit_sheet import full_name
from visits.models import StockPlace, SupplyLine
from visits.services.kit.receive_supply import ArrivedLine
from visits.web.kit.quantity_field import QuantityField
from visits.web.kit.stock_forms import place_field


@dataclass(frozen=True)
class ArrivedRow:
    """One line of an order and the fields of what came of it."""

    line: SupplyLine
    rest: Decimal
    fields: Sequence[BoundField]
    closes: BoundField


class ArrivedForm(forms.Form):
    """What came of an order: filled in as ordered, mended where it came otherwise."""

    all_may_stay_empty = True

    uid = forms.UUIDField(widget=forms.HiddenInput)
    arrived_on = forms.DateField(label="Came on", widget=DAY)

    def __init__(
        self, lines: Sequence[SupplyLine], scope: Scope, today: date, data: QueryDict | None = None
    ) -> None:
        super().__init__(data, initial={"uid": uuid4(), "arrived_on": today})
        self.lines = lines
        self.fields["place"] = place_field("Lies in", scope)
        for line in lines:
            for name, field in _line_fields(line).items():
                self.fields[f"{name}_{line.pk}"] = field

    @property
    def rows(self) -> list[ArrivedRow]:
        return [
            ArrivedRow(
                line,
                line.quantity - line.arrived,
                [self[f"{name}_{line.pk}"] for name in ("quantity", "lot", "expires", "cost")],
                self[f"closes_{line.pk}"],
            )
            for line in self.lines
        ]

    @property
    def place(self) -> StockPlace:
        place: StockPlace = self.cleaned_data["place"]
        return place

    def arrived(self) -> list[ArrivedLine]:
        """What came, once the form is valid; lines of which nothing is said are left out."""
        told = self.cleaned_data
        found = [
            ArrivedLine(
                line,
                told[f"quantity_{line.pk}"] or Decimal(0),
                told[f"cost_{line.pk}"],
                told[f"lot_{line.pk}"],
                told[f"expires_{line.pk}"],
                told[f"closes_{line.pk}"],
            )
            for line in self.lines
        ]
        return [each for each in found if each.quantity or each.closes]


def _line_fields(line: SupplyLine) -> dict[str, forms.Field]:
    item, rest = line.consumable, line.quantity - line.arrived
    unit = "" if item.unit == "each" else f" ({item.unit})"
    cost = None if item.price is None else (item.price * rest / item.pack).quantize(Decimal("0.01"))
    fields: dict[str, forms.Field] = {
        "quantity": QuantityField(label=f"Came{unit}"),
        "lot": forms.CharField(label="Lot", required=False, max_length=60),
        "expires": forms.DateField(label="Best before", required=False, widget=DAY),
        "cost": QuantityField(label="Cost"),
        "closes": forms.BooleanField(label="The rest will not come", required=False),
    }
    fields["quantity"].initial, fields["cost"].initial = rest, cost
    for name, field in fields.items():
        if name != "closes":
            field.widget.attrs["aria-label"] = f"{field.label}: {full_name(item.name, item.size)}"
    return fields


class CallOffForm(forms.Form):
    because = forms.CharField(label="Why", required=False, max_length=120)
