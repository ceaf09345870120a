"""The form of a delivery."""

from collections.abc import Mapping

from django import forms
from django.forms.boundfield import BoundField
from django.http import QueryDict

from trimops.kernel.scope import Scope
from trimops.web.day_input import DAY
from visits.services.kit.buy_stock import BoughtItem
from visits.web.kit.quantity_field import QuantityField
from visits.web.kit.stock_forms import StockForm, item_words, place_field

Initial = Mapping[str, object]
LINES, SHOWN = 10, 3
PARTS = ("quantity", "code", "expires_on", "cost")


class BoughtForm(StockForm):
    """One delivery with several lines; a line without a consumable is none."""

    all_may_stay_empty = True

    bought_on = forms.DateField(label="Bought on", widget=DAY)
    supplier = forms.CharField(label="From", max_length=120, required=False)

    field_order = ("bought_on", "place", "supplier", "note")

    def __init__(
        self, data: QueryDict | None = None, *, initial: Initial | None = None, scope: Scope
    ) -> None:
        super().__init__(data, initial=initial, scope=scope)
        del self.fields["at"]
        self.fields["place"] = place_field("Put into", scope)
        choices = [("", "–"), *((str(item.pk), item_words(item)) for item in self.items)]
        for n in range(LINES):
            self.fields[f"item_{n}"] = forms.ChoiceField(label="What", choices=choices, required=False)
            self.fields[f"quantity_{n}"] = QuantityField(label="How much", least="0.01")
            self.fields[f"code_{n}"] = forms.CharField(
                label="Lot on the label", max_length=60, required=False
            )
            self.fields[f"expires_on_{n}"] = forms.DateField(label="Best before", widget=DAY, required=False)
            self.fields[f"cost_{n}"] = QuantityField(label="Price of it all")
        self.order_fields(self.field_order)

    @property
    def own_fields(self) -> list[BoundField]:
        return [self[name] for name in self.field_order]

    @property
    def first_lines(self) -> list[list[BoundField]]:
        return [self._line(n) for n in range(SHOWN)]

    @property
    def more_lines(self) -> list[list[BoundField]]:
        return [self._line(n) for n in range(SHOWN, LINES)]

    @property
    def more_are_used(self) -> bool:
        return any(field.data for line in self.more_lines for field in line if self.is_bound)

    def _line(self, n: int) -> list[BoundField]:
        return [self[f"{part}_{n}"] for part in ("item", *PARTS)]

    def clean(self) -> None:
        super().clean()
        told = self.cleaned_data
        used = False
        for n in range(LINES):
            if not told.get(f"item_{n}"):
                if any(told.get(f"{part}_{n}") not in (None, "") for part in PARTS):
                    self.add_error(f"item_{n}", f"Line {n + 1}: say what it is.")
                continue
            used = True
            if told.get(f"quantity_{n}") is None and f"quantity_{n}" not in self.errors:
                self.add_error(f"quantity_{n}", f"Line {n + 1}: say how much was bought.")
        if not used and not self.errors:
            self.add_error("item_0", "Say what was bought.")

    def lines(self) -> list[BoughtItem]:
        """What was bought, once the form is valid."""
        told, by_key = self.cleaned_data, {str(item.pk): item for item in self.items}
        return [
            BoughtItem(
                consumable=by_key[told[f"item_{n}"]],
                quantity=told[f"quantity_{n}"],
                cost=told[f"cost_{n}"],
                lot_code=told[f"code_{n}"],
                expires_on=told[f"expires_on_{n}"],
            )
            for n in range(LINES)
            if told[f"item_{n}"]
        ]
