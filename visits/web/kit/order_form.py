"""The form of an order: how many packs of each thing from one supplier."""

from collections.abc import Sequence
from dataclasses import dataclass
from uuid import uuid4

from django import forms
from django.forms.boundfield import BoundField
from django.http import QueryDict

from trimops.web.asked import number_asked
from visits.domain.kit.order_text import OrderedLine
from visits.selectors.kit.order_list import OrderRow, SupplierList
from visits.services.kit.place_order import MOST_PACKS, OrderWord, WantedLine


@dataclass(frozen=True)
class PacksRow:
    """One thing that may be ordered, and how many packs of it."""

    row: OrderRow
    field: BoundField


class SupplierForm(forms.Form):
    """Packs of each thing from one supplier; what is to be ordered today is filled in."""

    uid = forms.UUIDField(widget=forms.HiddenInput)
    supplier = forms.CharField(widget=forms.HiddenInput, required=False, max_length=120)
    seen = forms.CharField(widget=forms.HiddenInput, required=False)
    by_mail = forms.BooleanField(required=False)
    note = forms.CharField(label="Note", required=False, max_length=200, help_text="How it was ordered, say.")

    def __init__(
        self, told: SupplierList, seen: Sequence[int], number: int, data: QueryDict | None = None
    ) -> None:
        first = {"uid": uuid4(), "supplier": told.supplier, "seen": ",".join(map(str, seen))}
        super().__init__(data, initial=first, auto_id=f"order-{number}-%s")
        self.told, self.number = told, number
        self.fields["by_mail"].label = f"Sent by mail to {told.email}"
        for row in told.rows:
            field = forms.IntegerField(min_value=0, max_value=MOST_PACKS, required=False)
            field.label = f"Packs of {row.name}"
            field.initial = row.packs if row.is_today else None
            field.widget.attrs["inputmode"] = "numeric"
            self.fields[f"packs_{row.consumable.pk}"] = field

    @property
    def rows_today(self) -> list[PacksRow]:
        return self._rows(self.told.today)

    @property
    def rows_soon(self) -> list[PacksRow]:
        return self._rows(self.told.soon)

    @property
    def rows_not_yet(self) -> list[PacksRow]:
        return self._rows(self.told.not_yet)

    @property
    def packs(self) -> dict[int, int]:
        """Consumable -> packs: as typed, or as advised while nothing is typed."""
        found = {}
        for row in self.told.rows:
            key = row.consumable.pk
            advised = row.packs if row.is_today else 0
            found[key] = (self.cleaned_data.get(f"packs_{key}") or 0) if self.is_bound else advised
        return {key: packs for key, packs in found.items() if packs}

    @property
    def lines(self) -> list[OrderedLine]:
        packs = self.packs
        return [row.line(packs[row.consumable.pk]) for row in self.told.rows if row.consumable.pk in packs]

    def word(self) -> OrderWord:
        """What was ordered, once the form is valid."""
        told = self.cleaned_data
        return OrderWord(
            supplier=self.told.supplier,
            lines=[WantedLine(key, packs) for key, packs in self.packs.items()],
            uid=told["uid"],
            seen=frozenset(filter(None, map(number_asked, told["seen"].split(",")))),
            mailed_to=self.told.email if told["by_mail"] else "",
            note=told["note"],
        )

    def _rows(self, rows: Sequence[OrderRow]) -> list[PacksRow]:
        return [PacksRow(row, self[f"packs_{row.consumable.pk}"]) for row in rows]
