"""The mileage log: what was driven for the business, mended by the odometer, with its allowance."""

from django import forms
from django.contrib import messages
from django.core.paginator import Paginator
from django.db import transaction
from django.http import HttpRequest, HttpResponse, HttpResponseBase, QueryDict
from django.shortcuts import redirect
from django.urls import reverse

from invoicing.domain.travel_charge import DistanceUnit
from invoicing.models import Journey
from invoicing.selectors.mileage_log import mileage_log
from invoicing.selectors.money_rules import money_rules
from invoicing.services.change_journey import change_journey
from invoicing.services.keep_day_journeys import keep_journeys
from invoicing.services.note_journey import JourneyWord, note_journey
from invoicing.web.period_form import AskedPeriod, DrivesPeriodForm, asked_period
from trimops.accounts.actions import Action
from trimops.kernel.clock import local_day
from trimops.kernel.errors import RuleBroken
from trimops.kernel.scope import Scope
from trimops.web.day_input import DAY
from trimops.web.scoped_page import ScopedPage
from trimops.web.seen_form import SeenForm
from visits.models import Van

PER_PAGE = 60


class JourneyForm(forms.Form):
    on = forms.DateField(label="Day", widget=DAY)
    from_words = forms.CharField(label="From", max_length=120)
    to_words = forms.CharField(label="To", max_length=120)
    purpose = forms.CharField(label="What for", max_length=200)
    distance = forms.DecimalField(label="How far", min_value=0, max_digits=6, decimal_places=1)
    van: "forms.ModelChoiceField[Van]" = forms.ModelChoiceField(
        queryset=None, required=False, empty_label="None of the vans"
    )

    def __init__(
        self,
        data: QueryDict | None = None,
        *,
        scope: Scope,
        unit: DistanceUnit,
        initial: dict[str, object] | None = None,
    ) -> None:
        super().__init__(data, initial=initial)
        self.unit = unit
        self.fields["distance"].label = f"How far, {unit.short}"
        self.fields["van"].queryset = Van.objects.within(scope)  # type: ignore[attr-defined]

    def word(self) -> JourneyWord:
        """What was told, once the form is valid."""
        return JourneyWord(**self.cleaned_data, unit=self.unit)


class MendForm(SeenForm, forms.Form):
    distance = forms.DecimalField(
        label="How far it was",
        min_value=0,
        max_digits=6,
        decimal_places=1,
        help_text="0 where it was no drive for the business.",
    )
    because = forms.CharField(
        label="Why it is changed", max_length=200, help_text="For instance: odometer 41210 to 41236."
    )


class MileagePage(ScopedPage):
    does = Action.KEEP_MONEY
    template = "invoicing/mileage.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        asked = self._asked(request.GET)
        log = mileage_log(self.seat.business, asked.period)
        page = Paginator(log.drives, PER_PAGE).get_page(request.GET.get("page"))
        context = {"asked": asked, "log": log, "page": page, "unit": log.unit.short}
        return self.show(context)

    def post(self, request: HttpRequest) -> HttpResponseBase:
        """Take the drives of the period from the finished visits."""
        asked = self._asked(request.GET)
        period = asked.period
        made = keep_journeys(business=self.seat.business, first=period.first, last=period.last, at=self.now)
        said = f"{made} drives are new in the log." if made else "Every finished visit is in the log already."
        messages.success(request, said)
        return redirect(f"{reverse('mileage')}?{asked.query}")

    def _asked(self, data: QueryDict) -> AskedPeriod:
        today = local_day(self.now, self.seat.business.zone)
        return asked_period(self.scope, data, today, DrivesPeriodForm)


class JourneyNewPage(ScopedPage):
    does = Action.KEEP_MONEY
    template = "invoicing/journey_new.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        return self.show({"form": self._form(None)})

    def post(self, request: HttpRequest) -> HttpResponseBase:
        form = self._form(request.POST)
        if form.is_valid():
            try:
                row = note_journey(
                    business=self.seat.business, word=form.word(), at=self.now, by=self.seat.user
                )
            except RuleBroken as fault:
                form.add_error(None, fault.message)
            else:
                messages.success(request, "The drive is in the log.")
                return redirect(f"{reverse('mileage')}?kind=month&first={row.on.isoformat()}")
        return self.show({"form": form}, status=400)

    def _form(self, data: QueryDict | None) -> JourneyForm:
        unit = DistanceUnit(money_rules(self.scope).distance_unit)
        today = local_day(self.now, self.seat.business.zone)
        return JourneyForm(data, scope=self.scope, unit=unit, initial={"on": today})


class JourneyPage(ScopedPage):
    """One drive, and mending it."""

    does = Action.KEEP_MONEY
    template = "invoicing/journey.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        journey = self.fetch(Journey, pk, "van", "noted_by")
        return self._show(journey, MendForm(initial={"distance": journey.distance}))

    @transaction.atomic
    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        journey = self.fetch(Journey, pk, "van", "noted_by")
        form = MendForm(request.POST, initial={"distance": journey.locked().distance})
        if form.is_valid():
            try:
                change_journey(journey=journey, **form.cleaned_data, at=self.now, by=self.seat.user)
            except RuleBroken as fault:
                form.add_error(None, fault.message)
            else:
                messages.success(request, "The drive is mended; the old figure stays beside it.")
                return redirect(f"{reverse('mileage')}?kind=month&first={journey.on.isoformat()}")
        return self._show(journey, form, form.refused_as)

    def _show(self, journey: Journey, form: MendForm, status: int = 200) -> HttpResponse:
        unit = DistanceUnit(journey.unit).short
        return self.show({"journey": journey, "form": form, "unit": unit}, status=status)
