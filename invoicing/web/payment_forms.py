"""Forms of payments: what came in, and what it is set against."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from django import forms
from django.forms.boundfield import BoundField
from django.http import QueryDict

from farms.models import Farm
from invoicing.domain.minor_units import minor_digits
from invoicing.domain.settling import PaymentMethod, oldest_first
from invoicing.selectors.open_invoices import OpenRow
from invoicing.services.note_payment import MoneyReceived
from invoicing.web.amount_field import AmountField, PaidField
from trimops.kernel.choices import choices_of
from trimops.kernel.money import round_money
from trimops.web.day_input import DAY

Initial = Mapping[str, object]


class WhyForm(forms.Form):
    """A reason that is kept."""

    because = forms.CharField(label="Why", max_length=200)


class AmountForm(forms.Form):
    """An amount, not above what is there, and why."""

    amount = PaidField(label="Amount")
    reason = forms.CharField(label="Why", max_length=200)


class PaidBackForm(forms.Form):
    """Money that goes back to the farm."""

    amount = PaidField(label="Amount")
    paid_on = forms.DateField(label="Went out on", widget=DAY)
    method = forms.ChoiceField(label="How", choices=choices_of(PaymentMethod))
    note = forms.CharField(label="Note", required=False, max_length=300)


@dataclass(frozen=True)
class ShareRow:
    """One open invoice and the field that says how much is set against it."""

    row: OpenRow
    field: BoundField


class SharesForm(forms.Form):
    """An amount beside each open invoice; empty: nothing is set against it."""

    def __init__(
        self, rows: Sequence[OpenRow], data: QueryDict | None = None, *, initial: Initial | None = None
    ) -> None:
        super().__init__(data, initial=dict(initial or {}))
        self.rows = rows
        for row in rows:
            field = AmountField(label=row.number, required=False)
            field.widget.attrs["aria-label"] = f"Amount for {row.number}"
            self.fields[f"share_{row.key}"] = field

    def clean(self) -> dict[str, object]:
        """An amount beside an invoice that somebody else settled meanwhile is told, not dropped."""
        told: dict[str, object] = super().clean() or self.cleaned_data
        typed = [name for name, text in self.data.items() if name.startswith("share_") and str(text).strip()]
        if set(typed) - set(self.fields):
            raise forms.ValidationError(
                "An invoice that you put an amount beside is not open any more: it was settled meanwhile. "
                "Look at what is open now."
            )
        return told

    @property
    def share_rows(self) -> list[ShareRow]:
        return [ShareRow(row, self[f"share_{row.key}"]) for row in self.rows]

    @property
    def shares(self) -> dict[int, Decimal]:
        """What was put down, once the form is valid."""
        told = {row.key: self.cleaned_data.get(f"share_{row.key}") for row in self.rows}
        return {key: amount for key, amount in told.items() if amount}


def shared_out(amount: Decimal, rows: Sequence[OpenRow], currency: str) -> dict[str, object]:
    """Initial of the share fields: the oldest invoices first."""
    whole = round_money(amount, minor_digits(currency))
    shares = oldest_first(whole, [row.item for row in rows])
    return {f"share_{key}": share for key, share in shares.items()}


class PaymentForm(SharesForm):
    """Money that came in from one farm."""

    amount = PaidField(label="Amount")
    received_on = forms.DateField(label="Came in on", widget=DAY)
    method = forms.ChoiceField(label="How", choices=choices_of(PaymentMethod))
    reference = forms.CharField(label="Reference", required=False, max_length=140)
    note = forms.CharField(label="Note", required=False, max_length=300, help_text="For the office only.")

    @property
    def own_fields(self) -> list[BoundField]:
        return [self[name] for name in ("amount", "received_on", "method", "reference", "note")]

    def money(self, farm: Farm, currency: str) -> MoneyReceived:
        """What was put down, once the form is valid."""
        told = self.cleaned_data
        return MoneyReceived(
            farm=farm,
            received_on=told["received_on"],
            amount=told["amount"],
            currency=currency,
            method=PaymentMethod(told["method"]),
            shares=self.shares,
            reference=told["reference"],
            note=told["note"],
        )


def first_initial(today: date, rows: Sequence[OpenRow], chosen: int | None) -> dict[str, object]:
    """Today by bank; with one invoice chosen, all that is open of it."""
    found: dict[str, object] = {"received_on": today, "method": PaymentMethod.BANK.value}
    for row in rows:
        if row.key == chosen:
            found |= {"amount": row.open_amount, f"share_{row.key}": row.open_amount}
    return found
