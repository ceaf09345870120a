"""What is credited: all, or so many or so much of each line."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal

from django import forms
from django.forms.boundfield import BoundField
from django.http import QueryDict

from invoicing.domain.credit_lines import CreditableLine, CreditAsk
from invoicing.models import InvoiceLine
from invoicing.web.amount_field import AmountField

ALL, SOME = "all", "some"


@dataclass(frozen=True)
class CreditRow:
    """A line with what is left of it and its two fields."""

    line: InvoiceLine
    left: CreditableLine
    quantity: BoundField
    amount: BoundField


class CreditForm(forms.Form):
    """The fields of the lines count only where lines are chosen."""

    what = forms.ChoiceField(
        label="What is credited",
        choices=[(ALL, "All that is left of it"), (SOME, "Only what is put in below")],
        widget=forms.RadioSelect,
        initial=ALL,
    )
    reason = forms.CharField(label="Why", max_length=300, help_text="Stands on the credit note.")
    again = forms.BooleanField(
        label="The work may be billed again",
        required=False,
        help_text="Of lines credited to the end. Without it the work stays billed by this invoice.",
    )

    def __init__(
        self,
        data: QueryDict | None = None,
        *,
        lines: Sequence[InvoiceLine],
        left: Mapping[int, CreditableLine],
    ) -> None:
        super().__init__(data)
        self.lines, self.left = lines, left
        for line in lines:
            self.fields[f"quantity_{line.pk}"] = self._field(f"How many of “{line.description}”")
            self.fields[f"amount_{line.pk}"] = self._field(f"Amount off “{line.description}”")

    def _field(self, label: str) -> AmountField:
        field = AmountField(label=label, required=False)
        field.widget.attrs["aria-label"] = label
        return field

    def rows(self) -> Iterator[CreditRow]:
        """The lines with their fields, for a table."""
        for line in self.lines:
            yield CreditRow(line, self.left[line.pk], self[f"quantity_{line.pk}"], self[f"amount_{line.pk}"])

    def clean(self) -> None:
        super().clean()
        if self.cleaned_data.get("what") == SOME and not self.errors and not self.asks():
            self.add_error("what", "Put in how many, or an amount, on at least one line.")
        for line in self.lines:
            if self._said(f"quantity_{line.pk}") and self._said(f"amount_{line.pk}"):
                self.add_error(f"amount_{line.pk}", "Either how many or an amount, not both.")

    def _said(self, name: str) -> Decimal | None:
        return self.cleaned_data.get(name) or None

    def asks(self) -> list[CreditAsk] | None:
        """None: everything that is left."""
        if self.cleaned_data["what"] == ALL:
            return None
        found = [
            CreditAsk(line.pk, self._said(f"quantity_{line.pk}"), self._said(f"amount_{line.pk}"))
            for line in self.lines
        ]
        return [ask for ask in found if ask.quantity or ask.amount]
