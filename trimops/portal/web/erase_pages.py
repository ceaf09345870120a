"""For the business: handing a farm's data over, and erasing it."""

from django import forms
from django.contrib import messages
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from farms.models import Farm
from farms.selectors.erasures import done_erasure, open_erasure
from invoicing.selectors.books_of_farm import books_of_farm, loose_ends
from trimops.accounts.actions import Action
from trimops.kernel.clock import local_day
from trimops.portal.selectors.handed_over import data_counts
from trimops.portal.services.erase_farm import erase_farm
from trimops.portal.web.data_pages import hand_over
from trimops.web.page_rates import Cost
from trimops.web.scoped_page import ScopedPage
from visits.models import Visit


class FarmDataPage(ScopedPage):
    """What is kept of a farm; handing it over; whether the farm asked to be erased, or was."""

    does = Action.HAND_OVER_FARMS
    template = "portal/data_staff.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        farm = self.fetch(Farm, pk, "business")
        return self.show(
            {
                "farm": farm,
                "counts": data_counts(self.scope, farm),
                "wish": open_erasure(self.scope, farm),
                "done": done_erasure(self.scope, farm),
                "may_erase": self.seat.allows(Action.ERASE_FARMS) and farm.erased_at is None,
            }
        )


class FarmDataAll(ScopedPage):
    does = Action.HAND_OVER_FARMS
    costs = {"post": Cost.EXPORT}

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        return hand_over(self, self.fetch(Farm, pk, "business"), with_invoices=True)


class EraseForm(forms.Form):
    typed_name = forms.CharField(label="The farm's name, typed", max_length=120)


class FarmErasePage(ScopedPage):
    """The last page before what cannot be taken back."""

    does = Action.ERASE_FARMS
    template = "portal/data_erase_farm.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        return self._show(self.fetch(Farm, pk), EraseForm())

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        farm, form = self.fetch(Farm, pk), EraseForm(request.POST)
        if not form.is_valid():
            return self._show(farm, form, 400)
        erase_farm(farm=farm, typed_name=form.cleaned_data["typed_name"], at=self.now, by=self.seat.user)
        messages.success(request, "What was known of the farm is erased.")
        return redirect("farm_data", farm.pk)

    def _show(self, farm: Farm, form: EraseForm, status: int = 200) -> HttpResponse:
        ends = loose_ends(self.scope, farm, local_day(self.now, self.seat.business.zone))
        return self.show(
            {
                "farm": farm,
                "form": form,
                "counts": data_counts(self.scope, farm),
                "wish": open_erasure(self.scope, farm),
                "open_visits": Visit.objects.within(self.scope).open().filter(farm=farm).count(),
                "ends": ends,
                "undone": ends.is_any,
                "stays": books_of_farm(self.scope, farm),
            },
            status=status,
        )
