"""The form of how a business keeps its money."""

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from typing import TYPE_CHECKING, ClassVar

from django import forms
from django.core.exceptions import ValidationError
from django.core.files.base import File

from invoicing.domain.bank_account import in_fours
from invoicing.domain.read_amount import read_amount
from invoicing.domain.read_price_lines import plain_amount
from invoicing.models import MoneyRules
from invoicing.services.save_money_rules import MOST_LOGO_BYTES
from invoicing.web.amount_field import AmountField
from trimops.kernel.file_kinds import PICTURES
from trimops.web.day_input import DAY
from trimops.web.file_field import NamedFileField
from trimops.web.seen_form import SeenForm

if TYPE_CHECKING:
    RulesModelForm = forms.ModelForm[MoneyRules]
else:
    # Django's form classes take no type argument at run time.
    RulesModelForm = forms.ModelForm

PARTS = (
    ("Numbers", "invoice_prefix credit_prefix series_by_year bills_from"),
    ("Tax and rounding", "tax_name rounding_rule registration_name registration_number books_begin_month"),
    ("How to pay you", "account_name iban bic credit_terms cash_discount_percent cash_discount_days"),
    ("Reminders and interest", "days charges_interest interest_margin interest_days_in_year rate_rule sums"),
    ("On paper and on the road", "picture no_picture distance_unit"),
)


_SUM_BELOW = Decimal(10) ** 10
"""More no invoice comes to."""


@dataclass(frozen=True)
class RulesPart:
    """One part of the page: its heading and its fields."""

    heading: str
    fields: list[forms.BoundField]


class MoneyRulesForm(SeenForm, RulesModelForm):
    """Reminder days, fixed sums and the logo are read from fields of their own."""

    all_may_stay_empty: ClassVar[bool] = True

    cash_discount_percent = AmountField(
        label="Discount for paying soon, percent", required=False, decimal_places=2
    )
    cash_discount_days = forms.IntegerField(
        label="If paid within so many days", required=False, min_value=0, max_value=365
    )
    interest_margin = AmountField(label="Points above the reference rate", decimal_places=2)
    days = forms.CharField(
        label="Remind so many days after the due day",
        required=False,
        help_text="One number a step, such as 7, 21, 35. Empty: no reminders. Each is looked at before it goes.",
    )
    sums = forms.CharField(
        label="Fixed sum claimed once",
        required=False,
        widget=forms.Textarea(attrs={"rows": 3}),
        help_text="A line each: from this debt on, and the sum: 1000: 70. Ask your accountant what the law allows.",
    )
    picture = NamedFileField(
        endings=PICTURES,
        label="Logo",
        required=False,
        help_text="PNG or JPEG, 500 kB at most.",
        widget=forms.FileInput(attrs={"accept": "image/png,image/jpeg"}),
    )
    no_picture = forms.BooleanField(label="Take the logo off", required=False)

    class Meta:
        model = MoneyRules
        exclude = ["business", "logo", "reminder_days", "fixed_sums"]
        labels = {
            "rounding_rule": "Tax is rounded",
            "tax_name": "What the tax is called",
            "registration_name": "Another number on papers: its name",
            "registration_number": "Another number on papers",
            "invoice_prefix": "Invoice numbers begin with",
            "credit_prefix": "Credit note numbers begin with",
            "account_name": "Account in the name of",
            "credit_terms": "Terms printed under how to pay",
            "interest_days_in_year": "Days of a year of interest",
            "distance_unit": "Distances in",
            "bills_from": "Bill visits finished from",
        }
        # The labels say it already.
        help_texts = {"tax_name": "", "credit_terms": ""}
        widgets = {
            "credit_terms": forms.Textarea(attrs={"rows": 3}),
            "bills_from": DAY,
        }

    def __init__(self, *args: object, **kwargs: object) -> None:
        super().__init__(*args, **kwargs)
        self.initial["iban"] = in_fours(self.instance.iban)
        self.initial["days"] = ", ".join(str(day) for day in self.instance.reminder_days)
        self.initial["sums"] = "\n".join(
            f"{plain_amount(Decimal(str(debt)), 0)}: {plain_amount(Decimal(str(claimed)))}"
            for debt, claimed in self.instance.fixed_sums
        )
        for name in ("cash_discount_percent", "cash_discount_days"):
            self.initial[name] = self.initial.get(name) or None
        if not self.instance.logo:
            del self.fields["no_picture"]

    def parts(self) -> Iterator[RulesPart]:
        """The fields as the page lays them out."""
        for heading, names in PARTS:
            yield RulesPart(heading, [self[name] for name in names.split() if name in self.fields])

    def clean_cash_discount_percent(self) -> Decimal:
        return self.cleaned_data["cash_discount_percent"] or Decimal(0)

    def clean_cash_discount_days(self) -> int:
        return self.cleaned_data["cash_discount_days"] or 0

    def clean_iban(self) -> str:
        return "".join(str(self.cleaned_data["iban"]).split())

    def clean_picture(self) -> File | None:  # type: ignore[type-arg]
        """Refused by its size before it is read: a film would fill the memory."""
        told: File | None = self.cleaned_data["picture"]  # type: ignore[type-arg]
        if told and told.size > MOST_LOGO_BYTES:
            raise ValidationError("The logo is larger than 500 kB: choose a smaller picture.")
        return told

    def clean_days(self) -> list[int]:
        parts = str(self.cleaned_data["days"]).replace(",", " ").split()
        if not all(part.isascii() and part.isdecimal() and len(part) < 5 for part in parts):
            raise ValidationError("Whole numbers, such as 7, 21, 35.")
        return [int(part) for part in parts]

    def clean_sums(self) -> list[list[str]]:
        return [_pair(line) for line in str(self.cleaned_data["sums"]).splitlines() if line.strip()]

    def rules(self) -> MoneyRules:
        """What was put down, once the form is valid."""
        data, row = self.cleaned_data, self.instance
        row.reminder_days, row.fixed_sums = data["days"], data["sums"]
        if data.get("no_picture"):
            row.logo = None
        if data["picture"]:
            row.logo = data["picture"].read()
        return row


def _pair(line: str) -> list[str]:
    """Kept as text, because JSON knows no decimals."""
    debt, colon, claimed = line.partition(":")
    try:
        if not colon:
            raise ValueError
        pair = [read_amount(debt), read_amount(claimed)]
        if max(pair) >= _SUM_BELOW:
            raise ValueError
    except ValueError:
        raise ValidationError(
            f"“{line.strip()}”: write a debt, a colon and the sum, such as 1000: 70."
        ) from None
    if min(pair) < 0:
        raise ValidationError("Debts and sums are not below nought.")
    return [str(amount) for amount in pair]
