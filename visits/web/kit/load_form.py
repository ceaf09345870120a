"""Forms of the van check: what is put in, how cold it gets."""

from dataclasses import dataclass
from datetime import date

from django import forms
from django.forms.boundfield import BoundField
from django.http import QueryDict

from trimops.kernel.scope import Scope
from visits.domain.kit.cold_day import DayWeather
from visits.selectors.kit.last_load import last_load
from visits.selectors.kit.van_check import CheckRow, VanCheck
from visits.services.kit.load_van import LoadWord, WantedLoad
from visits.web.kit.quantity_field import QuantityField
from visits.web.kit.stock_forms import TakenForm

MOST_KEY = 2**63 - 1


@dataclass(frozen=True)
class LoadRow:
    """One thing of the day and how much of it is put in."""

    check: CheckRow
    field: BoundField


class LoadForm(TakenForm):
    """How much of each thing is put into the van; filled in as advised."""

    def __init__(self, check: VanCheck, scope: Scope, data: QueryDict | None = None) -> None:
        super().__init__(data, scope=scope)
        self.check = check
        self.fields["seen"] = forms.IntegerField(
            widget=forms.HiddenInput, initial=last_load(check.van), min_value=0, max_value=MOST_KEY
        )
        for row in check.rows:
            field = QuantityField(label=f"Put in: {row.name}")
            field.initial = row.load.load or None
            self.fields[f"item_{row.consumable.pk}"] = field

    @property
    def rows_to_load(self) -> list[LoadRow]:
        return [row for row in self._rows if row.check.load.load or row.check.load.missing]

    @property
    def rows_enough(self) -> list[LoadRow]:
        return [row for row in self._rows if not (row.check.load.load or row.check.load.missing)]

    @property
    def _rows(self) -> list[LoadRow]:
        return [LoadRow(row, self[f"item_{row.consumable.pk}"]) for row in self.check.rows]

    def load(self, day: date) -> LoadWord:
        """What was put in, once the form is valid."""
        said = self.cleaned_data
        told = {row.consumable: said.get(f"item_{row.consumable.pk}") for row in self.check.rows}
        loads = [WantedLoad(item, amount) for item, amount in told.items() if amount]
        return LoadWord(day, loads, said["seen"], is_really_there=bool(said["is_really_there"]))


class WeatherForm(forms.Form):
    """The forecast of a day, from wherever the trimmer has it."""

    lowest = QuantityField(label="Coldest °C", required=True, places=1, least=None)
    highest = QuantityField(label="Warmest °C", places=1, least=None)

    def weather(self) -> DayWeather:
        """What was typed, once the form is valid."""
        return DayWeather(self.cleaned_data["lowest"], self.cleaned_data["highest"])
