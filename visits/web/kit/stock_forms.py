"""Forms of what is moved, counted and written off. Each has a number of its own (`uid`), so that sending it twice books
once."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal
from uuid import UUID, uuid4

from django import forms
from django.forms.boundfield import BoundField
from django.http import QueryDict

from trimops.kernel.choices import choices_of
from trimops.kernel.errors import RuleBroken
from trimops.kernel.scope import Scope
from visits.domain.kit.kit_sheet import full_name
from visits.domain.kit.stock_kinds import Unit, WriteOffReason
from visits.models import Consumable, StockLot, StockPlace
from visits.web.forms import MOMENT
from visits.web.kit.quantity_field import QuantityField

Initial = Mapping[str, object]


class StockForm(forms.Form):
    """What every one of them has: its number, when it was (empty: now), a note."""

    uid = forms.UUIDField(widget=forms.HiddenInput)
    at = forms.DateTimeField(
        label="When", widget=MOMENT, required=False, help_text="Empty: now. A day in the past is fine."
    )
    note = forms.CharField(label="Note", max_length=200, required=False)

    def __init__(
        self, data: QueryDict | None = None, *, initial: Initial | None = None, scope: Scope
    ) -> None:
        super().__init__(data, initial={"uid": uuid4(), **(initial or {})})
        self.scope = scope
        self.items = list(Consumable.objects.within(scope).filter(is_active=True))

    def moment(self, now: datetime) -> datetime:
        """When it was, once the form is valid."""
        at: datetime | None = self.cleaned_data["at"]
        return at or now

    @property
    def uid_said(self) -> UUID:
        uid: UUID = self.cleaned_data["uid"]
        return uid


class TakenForm(StockForm):
    """Takes stock away. Where the ledger has less, it is asked whether it was really there; asked only then."""

    is_really_there = forms.BooleanField(
        label="It was really there: book it", required=False, widget=forms.HiddenInput
    )

    def refuse(self, fault: RuleBroken, *, is_about_stock: bool) -> None:
        """Say what is to be mended, and offer the tick."""
        self.add_error(None, fault.message)
        if is_about_stock:
            self.fields["is_really_there"].widget = forms.CheckboxInput()


def item_words(item: Consumable) -> str:
    """Name, size, and what it is counted in where that is not pieces."""
    unit = "" if item.unit == Unit.EACH else f" ({item.unit})"
    return f"{full_name(item.name, item.size)}{unit}"


def place_field(label: str, scope: Scope) -> "forms.ModelChoiceField[StockPlace]":
    return forms.ModelChoiceField(
        label=label, queryset=StockPlace.objects.within(scope).select_related("van"), empty_label=None
    )


@dataclass(frozen=True)
class AmountRow:
    """One consumable of a page that lists them all, with its field; `there` is what the ledger says lies there."""

    item: Consumable
    words: str
    field: BoundField
    there: Decimal | None = None

    @property
    def unit(self) -> Unit:
        return Unit(self.item.unit)


class AmountsForm(StockForm):
    """A number beside each consumable in use; empty: not of this one."""

    all_may_stay_empty = True
    least = "0"
    verb = "How much"

    def __init__(
        self,
        data: QueryDict | None = None,
        *,
        initial: Initial | None = None,
        scope: Scope,
        there: Mapping[int, Decimal] | None = None,
    ) -> None:
        super().__init__(data, initial=initial, scope=scope)
        self.there = there or {}
        for item in self.items:
            field = QuantityField(label=item_words(item), least=self.least)
            field.widget.attrs["aria-label"] = f"{self.verb}: {item_words(item)}"
            self.fields[f"item_{item.pk}"] = field

    @property
    def rows(self) -> list[AmountRow]:
        return [
            AmountRow(item, item_words(item), self[f"item_{item.pk}"], self.there.get(item.pk))
            for item in self.items
        ]

    @property
    def own_fields(self) -> list[BoundField]:
        return [self[name] for name in ("at", "note")]

    def clean(self) -> None:
        super().clean()
        if not self.errors and not self.amounts():
            raise forms.ValidationError("Write a number beside at least one line.")

    def amounts(self) -> dict[Consumable, Decimal]:
        """Consumable -> number, once the form is valid; what was left empty is left out."""
        told = {item: self.cleaned_data.get(f"item_{item.pk}") for item in self.items}
        return {item: amount for item, amount in told.items() if amount is not None}


class CountForm(AmountsForm):
    """What lies at one place, counted."""

    verb = "Counted"


class MovedForm(AmountsForm, TakenForm):
    """From one place to another; both stand in the address of the page."""

    least = "0.01"
    verb = "Moved"


class WayForm(forms.Form):
    """From where to where; asked in the address."""

    def __init__(
        self, data: QueryDict | None = None, *, initial: Initial | None = None, scope: Scope
    ) -> None:
        super().__init__(data, initial=dict(initial or {}))
        self.fields["from"] = place_field("From", scope)
        self.fields["to"] = place_field("To", scope)


class WrittenOffForm(TakenForm):
    """One consumable, thrown away or gone."""

    quantity = QuantityField(label="How much", required=True, least="0.01")
    because = forms.ChoiceField(label="Why", choices=[("", "Choose"), *choices_of(WriteOffReason)])

    field_order = ("is_really_there", "place", "item", "lot", "quantity", "because", "at", "note")

    def __init__(
        self,
        data: QueryDict | None = None,
        *,
        initial: Initial | None = None,
        scope: Scope,
        lots: Collection[int] = (),
    ) -> None:
        super().__init__(data, initial=initial, scope=scope)
        self.fields["place"] = place_field("Where it lay", scope)
        items = Consumable.objects.within(scope)
        self.fields["item"] = forms.ModelChoiceField(label="What", queryset=items, empty_label=None)
        self.fields["item"].label_from_instance = item_words  # type: ignore[attr-defined]
        if lots:
            rows = StockLot.objects.within(scope).filter(pk__in=lots)
            self.fields["lot"] = forms.ModelChoiceField(
                label="Which lot", queryset=rows, required=False, empty_label="The one with the oldest date"
            )
        self.order_fields(self.field_order)
