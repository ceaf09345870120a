"""How one farm is billed: how often, with which tax, and where its papers go."""

from typing import TYPE_CHECKING

from django import forms
from django.contrib import messages
from django.core.exceptions import ValidationError
from django.core.validators import validate_email
from django.db import transaction
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from farms.models import Farm
from invoicing.domain.code_lists import COUNTRIES
from invoicing.models import FarmTerms
from invoicing.selectors.farm_terms import farm_terms
from invoicing.selectors.money_addresses import money_addresses
from invoicing.selectors.tax_choices import tax_choices
from invoicing.services.save_farm_terms import save_farm_terms
from trimops.accounts.actions import Action
from trimops.web.scoped_page import ScopedPage
from trimops.web.seen_form import SeenForm

if TYPE_CHECKING:
    TermsModelForm = forms.ModelForm[FarmTerms]
else:
    # Django's form classes take no type argument at run time.
    TermsModelForm = forms.ModelForm


class FarmTermsForm(SeenForm, TermsModelForm):
    addresses = forms.CharField(
        label="Email addresses for its papers",
        required=False,
        widget=forms.Textarea(attrs={"rows": 3}),
    )
    tax_code = forms.ChoiceField(label="Tax", required=False)
    country = forms.CharField(label="Country of who pays", required=False, max_length=2)
    field_order = (
        *("rhythm", "addresses", "sends_xml", "payment_days", "gets_reminders"),
        *("order_number", "buyer_reference", "country"),
    )

    class Meta:
        model = FarmTerms
        fields = [
            "rhythm",
            "sends_xml",
            "payment_days",
            "gets_reminders",
            "order_number",
            "buyer_reference",
            "tax_code",
            "note",
        ]
        labels = {
            "rhythm": "It is billed",
            "sends_xml": "Send the e-invoice (XML) with the mail",
            "payment_days": "Days to pay",
            "gets_reminders": "Gets reminders when it is late",
            "order_number": "Order number",
            "buyer_reference": "Reference that the farm wants on it",
            "note": "Note for the office",
        }
        help_texts = {"note": ""}

    def __init__(self, *args: object, farm: Farm, taxes: list[tuple[str, str]], **kwargs: object) -> None:
        super().__init__(*args, **kwargs)
        who = farm.payer or farm
        fallback = ", ".join(money_addresses(farm)) or "none is known"
        self.fields["tax_code"].choices = [("", "as the price list has it"), *taxes]  # type: ignore[attr-defined]
        self.fields["addresses"].help_text = f"A line each. Empty: that of who pays ({fallback})."
        self.fields[
            "country"
        ].help_text = f"Two letters, of {who.name}. Empty: {farm.business.country}, as the business."
        own = farm.payer.payment_days if farm.payer else None
        usual = farm.business.payment_days if own is None else own
        self.fields["payment_days"].help_text = f"Empty: {usual}."
        self.initial["addresses"] = "\n".join(self.instance.send_to)
        self.initial["country"] = who.country

    def clean_addresses(self) -> list[str]:
        told = [line.strip() for line in self.cleaned_data["addresses"].splitlines() if line.strip()]
        for address in told:
            try:
                validate_email(address)
            except ValidationError:
                raise ValidationError(f"“{address}” is no email address.") from None
        return list(dict.fromkeys(told))

    def clean_country(self) -> str:
        told: str = self.cleaned_data["country"].strip().upper()
        if told and told not in COUNTRIES:
            raise ValidationError(f"“{told}” is no country: two letters, such as IE or NL.")
        return told

    def terms(self) -> FarmTerms:
        """What was put down, once the form is valid."""
        self.instance.send_to = self.cleaned_data["addresses"]
        return self.instance


class FarmTermsPage(ScopedPage):
    does = Action.KEEP_PRICES
    template = "invoicing/farm_terms.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        farm = self._farm(pk)
        return self._show(farm, self._form(farm))

    @transaction.atomic
    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        farm = self._farm(pk)
        farm.locked()
        form = self._form(farm, request)
        if not form.is_valid():
            return self._show(farm, form, form.refused_as)
        country = form.cleaned_data["country"]
        save_farm_terms(terms=form.terms(), country=country, at=self.now, by=self.seat.user)
        messages.success(request, "Kept. Drafts take it up when they are drafted again.")
        return redirect("farm_terms", farm.pk)

    def _farm(self, pk: int) -> Farm:
        return self.fetch(Farm, pk, "payer", "business")

    def _form(self, farm: Farm, request: HttpRequest | None = None) -> FarmTermsForm:
        told = request.POST if request else None
        return FarmTermsForm(told, instance=farm_terms(farm), farm=farm, taxes=tax_choices(self.scope))

    def _show(self, farm: Farm, form: FarmTermsForm, status: int = 200) -> HttpResponse:
        return self.show({"farm": farm, "form": form, "kept": farm_terms(farm)}, status=status)
