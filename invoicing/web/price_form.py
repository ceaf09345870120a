"""The form of a price list: every item with its steps and tax, travel, and the rules beside them."""

from collections.abc import Iterator, Mapping
from decimal import Decimal
from typing import ClassVar

from django import forms
from django.http import QueryDict

from invoicing.domain.out_of_hours import UsualHours
from invoicing.domain.price_steps import PriceStep, StepRule
from invoicing.domain.pricing import PriceItem
from invoicing.domain.read_price_lines import read_bands, read_steps
from invoicing.domain.travel_charge import DistanceUnit, TravelRule, TravelTerms
from invoicing.domain.travel_lines import distance_item
from invoicing.services.set_prices import ItemPrice, PriceSheet
from invoicing.web.amount_field import AmountField
from trimops.kernel.choices import choices_of
from trimops.paper.days import DAYS
from trimops.web.day_input import DAY
from trimops.web.seen_form import SeenForm

WORK = (
    *(PriceItem.FUNCTIONAL, PriceItem.CORRECTIVE, PriceItem.CHECK),
    *(PriceItem.BLOCK, PriceItem.SHOE, PriceItem.WRAP, PriceItem.DRESSING),
)
VISIT = (PriceItem.CALL_OUT, PriceItem.URGENT, PriceItem.OUT_OF_HOURS)
DISTANCE = "distance"
LABELS = {
    **{item.value: item.label for item in (*WORK, *VISIT)},
    DISTANCE: "Travel, a kilometre or mile",
}
WITH_STEPS = frozenset({*(item.value for item in WORK), DISTANCE})
TIME = forms.TimeInput(attrs={"type": "time"}, format="%H:%M")


class PriceForm(SeenForm, forms.Form):
    """Empty prices are not on the list. `taxes` are (code, words); with one alone nobody is asked.

    A list that is new changes nobody's, whatever it was begun from.
    """

    all_may_stay_empty: ClassVar[bool] = True

    name = forms.CharField(label="Name", max_length=60)
    valid_from = forms.DateField(label="Hold from", widget=DAY)
    step_rule = forms.ChoiceField(label="How steps count", choices=choices_of(StepRule))
    travel_rule = forms.ChoiceField(label="Travel", choices=choices_of(TravelRule))
    travel_unit = forms.ChoiceField(label="Travel is measured in", choices=choices_of(DistanceUnit))
    bands = forms.CharField(
        label="Bands of travel",
        required=False,
        widget=forms.Textarea(attrs={"rows": 4}),
        help_text="A line each, up to how far from the base one way, and the price: 10: 8.00. Last: beyond: 40.00",
    )
    minimum = AmountField(label="A visit comes to at least", required=False, decimal_places=2)
    guarantee_days = forms.IntegerField(
        label="Re-checks are free for so many days",
        required=False,
        min_value=0,
        max_value=365,
        help_text="Counted from our trim of that foot. A visit for nothing else is free altogether.",
    )
    usual_from = forms.TimeField(label="Usual hours begin", required=False, widget=TIME)
    usual_until = forms.TimeField(label="Usual hours end", required=False, widget=TIME)
    usual_weekdays = forms.MultipleChoiceField(
        label="Usual days",
        choices=[(str(n), day) for n, day in enumerate(DAYS, start=1)],
        widget=forms.CheckboxSelectMultiple,
        help_text="Outside of them the out-of-hours supplement is charged.",
    )

    def __init__(
        self,
        data: QueryDict | None = None,
        *,
        taxes: list[tuple[str, str]],
        initial: Mapping[str, object] | None = None,
        is_new: bool = False,
    ) -> None:
        super().__init__(data, initial=dict(initial or {}), is_new=is_new)
        self.taxes = taxes
        for key, label in LABELS.items():
            self.fields[f"{key}-price"] = AmountField(label=label, required=False)
            if key in WITH_STEPS:
                self.fields[f"{key}-steps"] = forms.CharField(
                    label="In steps", required=False, max_length=200
                )
            self.fields[f"{key}-tax"] = forms.ChoiceField(
                label="Tax",
                choices=taxes,
                required=False,
                widget=forms.Select if len(taxes) > 1 else forms.HiddenInput,
            )

    def work_rows(self) -> Iterator[list[forms.BoundField]]:
        yield from (self._row(item.value) for item in WORK)

    def visit_rows(self) -> Iterator[list[forms.BoundField]]:
        yield from (self._row(item.value) for item in VISIT)

    def distance_row(self) -> list[forms.BoundField]:
        return self._row(DISTANCE)

    def _row(self, key: str) -> list[forms.BoundField]:
        """What stands in one line of the page: price, steps, tax."""
        names = [f"{key}-{part}" for part in ("price", "steps", "tax") if f"{key}-{part}" in self.fields]
        return [self[name] for name in names if not self[name].is_hidden]

    def clean(self) -> dict[str, object]:
        told: dict[str, object] = super().clean() or self.cleaned_data
        for key, label in LABELS.items():
            self._read(f"{key}-steps", read_steps, f"{label}: ")
            if told.get(f"{key}-steps") and told.get(f"{key}-price", 0) is None:
                self.add_error(f"{key}-price", f"{label}: give the price that the steps begin with.")
        self._read("bands", read_bands, "")
        start, end = told.get("usual_from"), told.get("usual_until")
        if start and end and start >= end:  # type: ignore[operator]  # because: both are times when given
            self.add_error("usual_until", "The usual hours end after they begin.")
        return told

    def _read(self, field: str, read: object, before: str) -> None:
        """Replace the words typed by what they say, or say what is wrong with them."""
        if field in self.cleaned_data and callable(read):
            try:
                self.cleaned_data[field] = read(self.cleaned_data[field])
            except ValueError as fault:
                self.add_error(field, f"{before}{fault}")

    def sheet(self) -> PriceSheet:
        """What was put down, once the form is valid."""
        data = self.cleaned_data
        usual_tax = self.taxes[0][0] if self.taxes else ""
        unit = DistanceUnit(data["travel_unit"])
        items = {item.value: item for item in (*WORK, *VISIT)} | {DISTANCE: distance_item(unit)}
        return PriceSheet(
            name=data["name"],
            valid_from=data["valid_from"],
            prices=tuple(
                ItemPrice(item, self._steps(key), data.get(f"{key}-tax") or usual_tax)
                for key, item in items.items()
                if data[f"{key}-price"] is not None
            ),
            step_rule=StepRule(data["step_rule"]),
            travel=TravelTerms(TravelRule(data["travel_rule"]), unit, data["bands"]),
            minimum=data["minimum"] or Decimal(0),
            guarantee_days=data["guarantee_days"] or 0,
            hours=UsualHours(
                data["usual_from"], data["usual_until"], "".join(sorted(data["usual_weekdays"]))
            ),
        )

    def _steps(self, key: str) -> tuple[PriceStep, ...]:
        data = self.cleaned_data
        return (PriceStep(1, data[f"{key}-price"]), *data.get(f"{key}-steps", ()))
