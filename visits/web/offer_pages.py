"""When can you come: the question, the places there are, holding one, taking it or letting it go."""

from django.contrib import messages
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from farms.models import Farm
from trimops.accounts.actions import Action
from trimops.kernel.clock import local_day
from trimops.web.scoped_page import ScopedPage
from visits.models import HeldCow, HeldHour, Visit
from visits.selectors.business_figures import figures_of
from visits.selectors.farm_offers import farm_offers
from visits.services.hold_offer import OfferToHold, asked_for, hold_offer
from visits.services.let_go_offer import let_go_offer
from visits.services.take_offer import take_offer
from visits.web.offer_forms import HoldForm, TakeForm, WhenForm

SHOWN_AT_ONCE = 6


class FarmWhenPage(ScopedPage):
    """The question; with its answers in the address, what can be offered."""

    does = Action.KEEP_VISITS
    template = "visits/farm_when.html"

    def get(self, request: HttpRequest, farm_pk: int) -> HttpResponse:
        farm = self.fetch(Farm, farm_pk, "business")
        if "reason" not in request.GET:
            return self._show(farm, WhenForm(initial={"head_count": 1, "corrective_count": 1}))
        form = WhenForm(request.GET)
        if not form.is_valid():
            return self._show(farm, form, 400)
        wish = form.wish(local_day(self.now, farm.business.zone))
        asked = asked_for(farm, wish)
        found = farm_offers(asked, self.now)
        best, more = found.fits[:SHOWN_AT_ONCE], found.fits[SHOWN_AT_ONCE:]
        fields = [(name, request.GET.get(name, "")) for name in form.fields]
        return self._show(
            farm, form, wish=wish, asked=asked, found=found, best=best, more=more, asked_fields=fields
        )

    def _show(self, farm: Farm, form: WhenForm, status: int = 200, **words: object) -> HttpResponse:
        kept = HeldHour.objects.within(self.scope).in_force(self.now).select_related("farm", "van")
        booked = Visit.objects.within(self.scope).open().filter(farm=farm).order_by("due_until", "id")
        minutes = round(figures_of(self.scope).planning.hold_minutes)
        return self.show(
            {"farm": farm, "form": form, "kept": kept, "booked": booked, "hold_minutes": minutes, **words},
            status=status,
        )


class HoldOfferPage(ScopedPage):
    does = Action.KEEP_VISITS

    def post(self, request: HttpRequest, farm_pk: int) -> HttpResponseBase:
        farm = self.fetch(Farm, farm_pk, "business")
        form = HoldForm(request.POST)
        if not form.is_valid():
            messages.warning(request, "Nothing was held. Look for an hour and press the button beside it.")
            return redirect("farm_when", farm.pk)
        wish = form.wish(local_day(self.now, farm.business.zone))
        offer = OfferToHold(wish, form.place())
        held = hold_offer(farm=farm, offer=offer, at=self.now, by=self.seat.user)
        return redirect("held_hour", held.pk)


class HeldHourPage(ScopedPage):
    """What is held and until when; the farm's answer."""

    does = Action.KEEP_VISITS
    template = "visits/held_hour.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        held = self.fetch(
            HeldHour, pk, "farm", "van", "business", "visit", "moved_visit__farm", "moved_van", "by"
        )
        in_force = held.is_in_force(self.now)
        return self.show(
            {
                "held": held,
                "farm": held.farm,
                "in_force": in_force,
                "cows": HeldCow.objects.within(self.scope).filter(held=held).select_related("cow"),
                "form": TakeForm(held=held),
                "now": self.now,
            }
        )


class TakeOfferPage(ScopedPage):
    does = Action.KEEP_VISITS

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        held = self.fetch(HeldHour, pk, "farm__business", "van", "business")
        form = TakeForm(request.POST, held=held)
        if not form.is_valid():
            messages.warning(request, "Choose one of the hours in the list.")
            return redirect("held_hour", held.pk)
        visit = take_offer(held=held, at=self.now, by=self.seat.user, start=form.cleaned_data["start"])
        messages.success(request, f"{held.farm} has its hour: the visit is confirmed.")
        return redirect("visit", visit.pk)


class LetGoOfferPage(ScopedPage):
    does = Action.KEEP_VISITS

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        held = self.fetch(HeldHour, pk, "farm")
        let_go_offer(held=held, at=self.now)
        messages.success(request, f"The hour held for {held.farm} is let go.")
        return redirect("farm_when", held.farm_id)
