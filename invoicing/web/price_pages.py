"""Prices and tax, by the day from which they hold."""

from django import forms
from django.contrib import messages
from django.db.models import Prefetch
from django.http import HttpRequest, HttpResponse, HttpResponseBase, QueryDict
from django.shortcuts import redirect

from invoicing.domain.pricing import PriceItem
from invoicing.models import Price, PriceList, TaxRate
from invoicing.models.prices import TAX_CATEGORIES
from invoicing.services.set_prices import Tariff, TaxReasonMissing, set_prices
from invoicing.web.invoice_pages import MONEY
from trimops.web.scoped_page import ScopedPage


class PricesForm(forms.Form):
    valid_from = forms.DateField(
        label="Hold from", widget=forms.DateInput(attrs={"type": "date"}, format="%Y-%m-%d")
    )
    tax_category = forms.ChoiceField(label="Tax", choices=TAX_CATEGORIES)
    tax_percent = forms.DecimalField(label="Tax, percent", min_value=0, max_value=100, decimal_places=2)
    tax_reason = forms.CharField(
        label="Why no tax is charged", required=False, max_length=200, help_text="Printed on the invoice."
    )

    def __init__(self, data: QueryDict | None = None, *, initial: dict[str, object] | None = None) -> None:
        super().__init__(data, initial=initial)
        for item in PriceItem:
            label = f"{item.label}, each" if item is not PriceItem.KILOMETRE else "Travel, a kilometre"
            self.fields[item.value] = forms.DecimalField(
                label=label, min_value=0, max_digits=8, decimal_places=2
            )

    def tariff(self) -> Tariff:
        """What was put down, once the form is valid."""
        data = self.cleaned_data
        prices = {item: data[item.value] for item in PriceItem}
        return Tariff(
            data["valid_from"], prices, data["tax_category"], data["tax_percent"], data["tax_reason"]
        )


class PricesPage(ScopedPage):
    roles = MONEY
    template = "invoicing/prices.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        return self._show(PricesForm(initial=self._latest()))

    def post(self, request: HttpRequest) -> HttpResponseBase:
        form = PricesForm(request.POST)
        if form.is_valid():
            try:
                set_prices(business=self.seat.business, tariff=form.tariff())
            except TaxReasonMissing as fault:
                form.add_error("tax_reason", fault.message)
            else:
                messages.success(request, "The prices are kept. Work done before that day keeps its own.")
                return redirect("prices")
        return self._show(form, 400)

    def _latest(self) -> dict[str, object]:
        """The newest list and rate, as a start for the next."""
        rate = TaxRate.objects.within(self.scope).order_by("-valid_from").first()
        newest = PriceList.objects.within(self.scope).first()
        found: dict[str, object] = {item.value: "0.00" for item in PriceItem}
        if newest is not None:
            found |= {price.item: price.unit_price for price in newest.prices.within(self.scope)}
        if rate is not None:
            found |= {"tax_category": rate.category, "tax_percent": rate.percent, "tax_reason": rate.reason}
        return found

    def _show(self, form: PricesForm, status: int = 200) -> HttpResponse:
        prices = Prefetch("prices", queryset=Price.objects.within(self.scope).order_by("id"))
        lists = list(PriceList.objects.within(self.scope).prefetch_related(prices)[:6])
        return self.show({"form": form, "lists": lists}, status=status)
