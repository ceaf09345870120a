"""What the office types to change a draft."""

from decimal import Decimal

from django import forms
from django.http import QueryDict

from invoicing.domain.discount import Discount
from invoicing.domain.home_currency import home_currency
from invoicing.domain.read_price_lines import plain_amount
from invoicing.models import Invoice, InvoiceLine, TaxRate
from invoicing.selectors.tax_choices import rate_words
from invoicing.services.change_draft_head import DraftHead
from invoicing.services.change_line import LineChange
from invoicing.web.amount_field import AmountField
from trimops.web.day_input import DAY
from trimops.web.seen_form import SeenForm


class ReasonForm(forms.Form):
    """Why."""

    reason = forms.CharField(label="Why", max_length=200, help_text="Kept with the draft.")


class IssueAllForm(forms.Form):
    """Whether the mails go as well."""

    send = forms.BooleanField(
        label="Send them by mail too",
        required=False,
        initial=True,
        help_text="A farm without an address gets none: its invoice stands under Issued.",
    )


class DiscountForm(ReasonForm):
    """A discount in percent or as an amount."""

    reason = forms.CharField(
        label="Why",
        max_length=200,
        help_text="Kept with the draft; of a discount it stands on the invoice too.",
    )
    percent = AmountField(label="Discount, percent", required=False, decimal_places=2)
    amount = AmountField(label="or discount, amount", required=False, decimal_places=4)

    def discount(self) -> Discount:
        """What was typed; nothing typed is no discount."""
        said = self.cleaned_data
        return Discount(said["percent"] or None, said["amount"] or None)


class LineForm(SeenForm, DiscountForm):
    """One line: its text, how many, less what, and why."""

    description = forms.CharField(label="Text", max_length=200)
    quantity = AmountField(label="How many")
    field_order = ("description", "quantity", "percent", "amount", "reason")

    def __init__(self, data: QueryDict | None = None, *, line: InvoiceLine) -> None:
        off = line.allowance if line.allowance_percent is None else None
        first = {
            "description": line.description,
            "quantity": plain_amount(line.quantity, 0),
            "percent": plain_amount(line.allowance_percent, 0) if line.allowance_percent else None,
            "amount": off or None,
        }
        super().__init__(data, initial=first)

    def change(self) -> LineChange:
        """What the line becomes."""
        said = self.cleaned_data
        return LineChange(said["description"], said["quantity"], self.discount())


class HandLineForm(ReasonForm):
    """A line besides the work."""

    description = forms.CharField(label="Text", max_length=200)
    quantity = AmountField(label="How many")
    unit_price = AmountField(label="Price of one, without tax")
    tax = forms.ChoiceField(label="Tax")
    field_order = ("description", "quantity", "unit_price", "tax", "reason")

    def __init__(self, data: QueryDict | None = None, *, rates: list[TaxRate]) -> None:
        super().__init__(data, initial={"quantity": "1"})
        self.rates = {str(rate.pk): rate for rate in rates}
        choices = [(str(rate.pk), rate_words(rate)) for rate in rates]
        self.fields["tax"].choices = choices  # type: ignore[attr-defined]

    def rate(self) -> TaxRate:
        """The rate that was chosen."""
        return self.rates[self.cleaned_data["tax"]]


class WholeForm(DiscountForm):
    """A discount on the whole, or a charge."""

    what = forms.ChoiceField(
        label="What", choices=[("off", "Discount"), ("charge", "Charge on top")], widget=forms.RadioSelect
    )
    rate = forms.ChoiceField(label="At which tax rate", required=False)
    field_order = ("what", "percent", "amount", "rate", "reason")

    def __init__(self, data: QueryDict | None = None, *, rates: list[tuple[str, Decimal]]) -> None:
        super().__init__(data, initial={"what": "off"})
        self.rates = {f"{category}|{percent:f}": (category, percent) for category, percent in rates}
        choices = [(key, f"{plain_amount(percent, 0)} %") for key, (_, percent) in self.rates.items()]
        self.fields["rate"].choices = [("", "Each in its share"), *choices]  # type: ignore[attr-defined]
        self.fields["percent"].label, self.fields["amount"].label = "Percent", "or amount, without tax"
        if len(choices) == 1:
            del self.fields["rate"]

    def chosen(self) -> tuple[str, Decimal] | None:
        """The rate that was chosen; None for each."""
        if "rate" not in self.fields:
            return next(iter(self.rates.values()))
        return self.rates.get(self.cleaned_data["rate"])


class HeadForm(SeenForm, ReasonForm):
    """What stands above and below the lines."""

    order_number = forms.CharField(label="Their order number", required=False, max_length=40)
    buyer_reference = forms.CharField(label="Their reference", required=False, max_length=60)
    note = forms.CharField(
        label="Note on the invoice",
        required=False,
        max_length=300,
        widget=forms.Textarea(attrs={"rows": 3}),
    )
    prepaid = AmountField(label="Paid before, with tax", required=False)
    home_rate = AmountField(label="Rate", required=False, decimal_places=8)
    tax_point = forms.DateField(
        label="Tax point",
        required=False,
        widget=DAY,
        help_text="The last day of the work. If the books are closed for that day, ask your accountant which holds.",
    )
    field_order = ("order_number", "buyer_reference", "note", "prepaid", "home_rate", "tax_point", "reason")

    def __init__(self, data: QueryDict | None = None, *, invoice: Invoice) -> None:
        names = ("note", "order_number", "buyer_reference", "tax_point", "home_rate")
        first = {name: getattr(invoice, name) for name in names}
        super().__init__(data, initial={**first, "prepaid": invoice.prepaid or None})
        home = home_currency(invoice.business.country, invoice.currency)
        rate = self.fields["home_rate"]
        rate.label = f"What one {invoice.currency} is in {home}"
        rate.help_text = f"The total tax must stand in {home} too: ask your accountant which rate holds."
        if not home or invoice.is_credit_note:
            del self.fields["home_rate"]
        if invoice.is_credit_note:
            del self.fields["prepaid"], self.fields["tax_point"]

    def head(self, invoice: Invoice) -> DraftHead:
        """What was typed; what was not asked stays."""
        said = self.cleaned_data
        return DraftHead(
            said["note"],
            said["order_number"],
            said["buyer_reference"],
            said.get("prepaid") or Decimal(0),
            said.get("tax_point"),
            said.get("home_rate", invoice.home_rate),
        )
