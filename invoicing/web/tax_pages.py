"""Tax rates, by the day from which they hold, and what the country's are."""

from django import forms
from django.contrib import messages
from django.db import transaction
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from invoicing.domain.tax_scheme import TaxScheme
from invoicing.models import TaxRate
from invoicing.models.prices import TAX_CATEGORIES
from invoicing.selectors.tax_rates import shown_rates
from invoicing.selectors.tax_schemes import tax_scheme_of
from invoicing.services.drop_tax_rate import drop_tax_rate
from invoicing.services.lock_period import PeriodLocked
from invoicing.services.set_tax_rate import (
    RateBilledOn,
    RateHoldsThen,
    RateMakesNoSense,
    RateWord,
    set_tax_rate,
)
from invoicing.web.amount_field import AmountField
from trimops.accounts.actions import Action
from trimops.web.day_input import DAY
from trimops.web.scoped_page import ScopedPage
from trimops.web.seen_form import SeenForm


class TaxRateForm(SeenForm, forms.Form):
    code = forms.SlugField(
        label="Short name", max_length=20, help_text="One word, such as standard or reduced."
    )
    name = forms.CharField(label="Name", required=False, max_length=60)
    category = forms.ChoiceField(label="Kind", choices=TAX_CATEGORIES)
    percent = AmountField(label="Percent", decimal_places=2)
    valid_from = forms.DateField(label="Holds from", widget=DAY)
    reason = forms.CharField(
        label="Why no tax is charged", required=False, max_length=200, help_text="Printed on the invoice."
    )
    reason_code = forms.CharField(
        label="Its code in the VATEX list",
        required=False,
        max_length=30,
        help_text="Of EN 16931, if one fits.",
    )

    def word(self) -> RateWord:
        """What was put down, once the form is valid."""
        return RateWord(**self.cleaned_data)


class TaxRatesPage(ScopedPage):
    """All rates; one more. `?take=standard` begins the form with the country's rate of that name."""

    does = Action.KEEP_PRICES
    template = "invoicing/tax_rates.html"

    def get(self, request: HttpRequest, pk: int | None = None) -> HttpResponse:
        row = self._row(pk)
        first = _fields(row) if row else self._taken(request)
        return self._show(row, TaxRateForm(initial=first, is_new=row is None))

    @transaction.atomic
    def post(self, request: HttpRequest, pk: int | None = None) -> HttpResponseBase:
        row = self._row(pk)
        first = _fields(row.locked()) if row else None
        form = TaxRateForm(request.POST, initial=first, is_new=row is None)
        if form.is_valid() and self._is_kept(form, row):
            messages.success(
                request, "The rate is kept. Ask your accountant whether it is right for your work."
            )
            return redirect("tax_rates")
        return self._show(row, form, form.refused_as)

    def _is_kept(self, form: TaxRateForm, row: TaxRate | None) -> bool:
        try:
            set_tax_rate(business=self.seat.business, word=form.word(), instead_of=row)
        except RateMakesNoSense as fault:
            form.add_error(fault.field, fault.message)
        except (RateHoldsThen, RateBilledOn, PeriodLocked) as fault:
            form.add_error("valid_from", fault.message)
        else:
            return True
        return False

    def _row(self, pk: int | None) -> TaxRate | None:
        return self.fetch(TaxRate, pk) if pk else None

    def _taken(self, request: HttpRequest) -> dict[str, object]:
        scheme = self._scheme()
        rates = scheme.rates if scheme else ()
        return next((_fields(rate) for rate in rates if rate.code == request.GET.get("take")), {})

    def _scheme(self) -> TaxScheme | None:
        return tax_scheme_of(self.seat.business.country)

    def _show(self, row: TaxRate | None, form: TaxRateForm, status: int = 200) -> HttpResponse:
        rates = shown_rates(self.scope)
        context: dict[str, object] = {"row": row, "form": form, "rates": rates, "scheme": self._scheme()}
        context["known"] = {rate.row.code for rate in rates}
        context["kinds"] = dict(TAX_CATEGORIES)
        return self.show(context, status=status)


def _fields(rate: object) -> dict[str, object]:
    names = ("code", "name", "category", "percent", "valid_from", "reason", "reason_code")
    return {name: getattr(rate, name) for name in names}


class TaxRateDrop(ScopedPage):
    """Take a rate off that nothing goes by."""

    does = Action.KEEP_PRICES

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        row = self.fetch(TaxRate, pk)
        drop_tax_rate(rate=row)
        messages.success(request, f"The rate “{row.name or row.code}” is gone.")
        return redirect("tax_rates")
