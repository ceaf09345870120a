"""Rates that law or a tax office sets, put down by their day: the reference rate, the mileage allowance."""

from dataclasses import dataclass
from decimal import Decimal

from django import forms
from django.contrib import messages
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from invoicing.domain.late_interest import RateRule
from invoicing.domain.mileage_allowance import AllowanceRate
from invoicing.domain.read_price_lines import plain_amount
from invoicing.domain.travel_charge import DistanceUnit
from invoicing.models import MileageRate, ReferenceRate
from invoicing.selectors.money_rules import money_rules
from invoicing.services.set_mileage_rate import set_mileage_rate
from invoicing.services.set_reference_rate import set_reference_rate
from invoicing.templatetags.prices import price
from trimops.accounts.actions import Action
from trimops.kernel.choices import choices_of
from trimops.kernel.clock import local_day
from trimops.kernel.errors import RuleBroken
from trimops.paper.days import MONTHS
from trimops.web.day_input import DAY
from trimops.web.scoped_page import ScopedPage

SHOWN = 24


class ReferenceRateForm(forms.Form):
    valid_from = forms.DateField(label="Holds from", widget=DAY)
    percent = forms.DecimalField(label="Rate, percent a year", max_digits=6, decimal_places=3)
    source = forms.CharField(
        label="Where it was read", max_length=200, help_text="Printed beside the interest on a reminder."
    )


class MileageRateForm(forms.Form):
    valid_from = forms.DateField(label="Holds from", widget=DAY)
    unit = forms.ChoiceField(label="By the", choices=choices_of(DistanceUnit))
    first_rate = forms.DecimalField(label="Allowance for each", min_value=0, max_digits=8, decimal_places=4)
    up_to = forms.IntegerField(
        label="Up to so many in a year",
        required=False,
        min_value=1,
        help_text="Empty where there is no limit.",
    )
    then_rate = forms.DecimalField(
        label="After that, for each", required=False, min_value=0, max_digits=8, decimal_places=4
    )
    month = forms.TypedChoiceField(
        label="The year of the allowance begins in", choices=list(enumerate(MONTHS, start=1)), coerce=int
    )
    day = forms.IntegerField(label="On the", min_value=1, max_value=31, initial=1)
    source = forms.CharField(label="Where it was read", max_length=200)

    def clean(self) -> None:
        super().clean()
        if self.cleaned_data.get("up_to") and self.cleaned_data.get("then_rate") is None:
            self.add_error("then_rate", "Give the rate after the limit, 0 if there is none.")

    def rate(self) -> AllowanceRate:
        """What was put down, once the form is valid."""
        data = self.cleaned_data
        begins = data["month"], data["day"]
        first, then = data["first_rate"], data["then_rate"] or Decimal(0)
        up_to: Decimal | None = data["up_to"]
        return AllowanceRate(data["valid_from"], DistanceUnit(data["unit"]), first, up_to, then, begins)


class ReferenceRatesPage(ScopedPage):
    does = Action.KEEP_MONEY
    template = "invoicing/reference_rates.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        return self._show(
            ReferenceRateForm(initial={"valid_from": local_day(self.now, self.seat.business.zone)})
        )

    def post(self, request: HttpRequest) -> HttpResponseBase:
        form = ReferenceRateForm(request.POST)
        if form.is_valid():
            try:
                set_reference_rate(business=self.seat.business, **form.cleaned_data)
            except RuleBroken as fault:
                form.add_error(None, fault.message)
            else:
                messages.success(request, "The rate is kept. Reminders that went out keep their figures.")
                return redirect("reference_rates")
        return self._show(form, 400)

    def _show(self, form: ReferenceRateForm, status: int = 200) -> HttpResponse:
        rules = money_rules(self.scope)
        rows = ReferenceRate.objects.within(self.scope).order_by("-valid_from")[:SHOWN]
        context: dict[str, object] = {
            "form": form,
            "rates": [(row, plain_amount(row.percent, 0)) for row in rows],
            "rules": rules,
            "margin": plain_amount(Decimal(rules.interest_margin), 0),
            "rule": RateRule(rules.rate_rule).label,
        }
        return self.show(context, status=status)


class MileageRatesPage(ScopedPage):
    does = Action.KEEP_MONEY
    template = "invoicing/mileage_rates.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        return self._show(MileageRateForm(initial=self._start()))

    def post(self, request: HttpRequest) -> HttpResponseBase:
        form = MileageRateForm(request.POST)
        if form.is_valid():
            try:
                set_mileage_rate(
                    business=self.seat.business, rate=form.rate(), source=form.cleaned_data["source"]
                )
            except RuleBroken as fault:
                form.add_error(None, fault.message)
            else:
                messages.success(request, "The allowance is kept.")
                return redirect("mileage_rates")
        return self._show(form, 400)

    def _start(self) -> dict[str, object]:
        """The newest rate, as a start for the next."""
        row = MileageRate.objects.within(self.scope).order_by("-valid_from").first()
        if row is None:
            return {"unit": money_rules(self.scope).distance_unit, "month": 1}
        return {
            "unit": row.unit,
            "month": row.year_begins_month,
            "day": row.year_begins_day,
            "up_to": row.up_to,
        }

    def _show(self, form: MileageRateForm, status: int = 200) -> HttpResponse:
        rows = MileageRate.objects.within(self.scope).order_by("-valid_from")[:SHOWN]
        return self.show(
            {"form": form, "rates": [_told(row, self.seat.business.currency) for row in rows]}, status=status
        )


@dataclass(frozen=True)
class ToldRate:
    """A mileage rate in words."""

    row: MileageRate
    first: str
    then: str
    month: str


def _told(row: MileageRate, currency: str) -> ToldRate:
    first = f"{price(row.first_rate, currency)} a {DistanceUnit(row.unit).label}"
    return ToldRate(row, first, price(row.then_rate, currency), MONTHS[row.year_begins_month - 1])
