"""What was agreed with a farm about its prices."""

from datetime import date

from django import forms
from django.contrib import messages
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from farms.models import Farm
from invoicing.domain.agreed_prices import AgreementKind
from invoicing.domain.pricing import PriceItem
from invoicing.models import Agreement
from invoicing.services.end_agreement import end_agreement
from invoicing.services.lock_period import PeriodLocked
from invoicing.services.save_agreement import AgreementMakesNoSense, AgreementWord, save_agreement
from invoicing.web.amount_field import AmountField
from trimops.accounts.actions import Action
from trimops.kernel.choices import choices_of
from trimops.kernel.clock import local_day
from trimops.web.day_input import DAY
from trimops.web.scoped_page import ScopedPage

WORDS = {item.value: item.label_with_unit for item in PriceItem if item is not PriceItem.OTHER}
WORDS |= {PriceItem.MINIMUM.value: "The minimum charge of a visit", "": "Everything but the minimum"}
AGREED_ON = sorted(WORDS.items(), key=lambda pair: pair[0] != "")


class AgreementForm(forms.Form):
    kind = forms.ChoiceField(label="What is agreed", choices=choices_of(AgreementKind))
    amount = AmountField(label="Percent, or the price without tax")
    item = forms.ChoiceField(label="For what", choices=AGREED_ON, required=False)
    why = forms.CharField(label="Why", max_length=200, help_text="Printed beside the line.")
    valid_from = forms.DateField(label="Holds from", widget=DAY)
    valid_until = forms.DateField(label="Last day", required=False, widget=DAY)

    def word(self) -> AgreementWord:
        """What was put down, once the form is valid."""
        data = self.cleaned_data
        return AgreementWord(
            AgreementKind(data["kind"]),
            data["amount"],
            PriceItem(data["item"]) if data["item"] else None,
            data["why"],
            data["valid_from"],
            data["valid_until"],
        )


class AgreementsPage(ScopedPage):
    """What holds, what held; one more."""

    does = Action.KEEP_PRICES
    template = "invoicing/agreements.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        return self._show(self.fetch(Farm, pk), AgreementForm(initial={"valid_from": self._today()}))

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        farm = self.fetch(Farm, pk)
        form = AgreementForm(request.POST)
        if form.is_valid() and self._is_kept(form, farm):
            messages.success(request, "Agreed. Drafts take it up when they are drafted again.")
            return redirect("agreements", farm.pk)
        return self._show(farm, form, 400)

    def _is_kept(self, form: AgreementForm, farm: Farm) -> bool:
        try:
            save_agreement(farm=farm, word=form.word())
        except AgreementMakesNoSense as fault:
            form.add_error(fault.field, fault.message)
        except PeriodLocked as fault:
            form.add_error("valid_from", fault.message)
        else:
            return True
        return False

    def _today(self) -> date:
        return local_day(self.now, self.seat.business.zone)

    def _show(self, farm: Farm, form: AgreementForm, status: int = 200) -> HttpResponse:
        rows = Agreement.objects.within(self.scope).filter(farm=farm)
        held = Agreement.objects.within(self.scope).held_on(self._today())
        agreements = [(row, WORDS.get(row.item, row.item)) for row in rows]
        context: dict[str, object] = {"farm": farm, "form": form, "agreements": agreements}
        context["today"] = self._today()
        context["held_count"] = held.filter(farm=farm).count()
        return self.show(context, status=status)


class AgreementEnd(ScopedPage):
    """Today is its last day."""

    does = Action.KEEP_PRICES

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        row = self.fetch(Agreement, pk)
        end_agreement(agreement=row, today=local_day(self.now, self.seat.business.zone))
        messages.success(request, "It holds no longer than today.")
        return redirect("agreements", row.farm_id)
