"""An hour held for a farm client: until when, and their answer."""

from django.contrib import messages
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from trimops.accounts.actions import Action
from trimops.portal.services.take_for_client import take_for_client
from trimops.portal.web.client_page import ClientPage
from visits.models import HeldCow, HeldHour
from visits.services.hold_offer import OfferIsGone
from visits.services.let_go_offer import HourIsNotHeld, let_go_offer
from visits.web.offer_forms import TakeForm


class PortalHeldPage(ClientPage):
    does = Action.ASK_FOR_OWN_FARM
    template = "portal/held.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        held = self.fetch(HeldHour, pk, "farm", "visit")
        cows = HeldCow.objects.within(self.scope).filter(held=held).select_related("cow").order_by("id")
        return self.show(
            {
                "held": held,
                "farm": held.farm,
                "cows": cows,
                "in_force": held.is_in_force(self.now),
                "form": TakeForm(held=held),
                # because: what the office wrote beside an hour that it held is for the office
                "note": held.note if held.by_id == self.seat.user.pk else "",
            }
        )


class PortalTakePage(ClientPage):
    does = Action.ASK_FOR_OWN_FARM

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        held = self.fetch(HeldHour, pk, "farm__business", "business")
        form = TakeForm(request.POST, held=held)
        if not form.is_valid():
            messages.warning(request, "Choose one of the hours in the list.")
            return redirect("portal_held", held.pk)
        try:
            take_for_client(held=held, start=form.cleaned_data["start"], at=self.now, by=self.seat.user)
        except (OfferIsGone, HourIsNotHeld) as gone:
            messages.warning(request, gone.message)
        else:
            messages.success(request, "The hour is yours: the visit is confirmed.")
        return redirect("portal_held", held.pk)


class PortalLetGoPage(ClientPage):
    does = Action.ASK_FOR_OWN_FARM

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        let_go_offer(held=self.fetch(HeldHour, pk), at=self.now)
        messages.success(request, "The hour is let go; nothing is planned by it.")
        return redirect("portal_home")
