"""A farm asks for a visit, is offered hours at once, and chooses one or leaves its wish with the business."""

from urllib.parse import urlencode

from allauth.core import ratelimit
from django.contrib import messages
from django.http import HttpRequest, HttpResponse, HttpResponseBase, QueryDict
from django.shortcuts import redirect
from django.urls import reverse

from farms.models import Farm
from trimops.accounts.actions import Action
from trimops.kernel.clock import local_day
from trimops.portal.services.hold_for_client import hold_for_client
from trimops.portal.services.leave_wish import leave_wish
from trimops.portal.web.ask_forms import PlaceForm, WishForm, asking_form
from trimops.portal.web.client_page import ClientPage
from visits.models import Visit
from visits.selectors.business_figures import figures_of
from visits.selectors.client_offers import client_offers
from visits.services.hold_offer import OfferIsGone, asked_for

ROUTINE_DAYS = 28


class AskingPage(ClientPage):
    """What all pages of asking share."""

    does = Action.ASK_FOR_OWN_FARM

    def form_of(self, farm: Farm, data: QueryDict) -> WishForm:
        today = local_day(self.now, farm.business.zone)
        return asking_form(data, farm=farm, today=today, what=data.get("what", ""))

    def show_form(self, farm: Farm, form: WishForm, status: int = 200) -> HttpResponse:
        coming = Visit.objects.within(self.scope).open().order_by("planned_start", "due_until")
        what = {"farm": farm, "form": form, "coming": coming, "is_routine": "head_count" in form.fields}
        return self.show(what, "portal/ask.html", status)


class PortalAskPage(AskingPage):
    """The question: a lame cow, or with `?what=routine` a routine visit."""

    def get(self, request: HttpRequest) -> HttpResponse:
        farm, today = self.farm(), local_day(self.now, self.seat.business.zone)
        what = request.GET.get("what", "urgent")
        first: dict[str, object] = {
            **{"what": what, "cow_1": request.GET.get("cow_1", ""), "since_1": today},
            **{"head_count": farm.routine_cows, "due_from": today},
            "due_until": today.fromordinal(today.toordinal() + ROUTINE_DAYS),
        }
        return self.show_form(farm, asking_form(None, farm=farm, today=today, what=what, initial=first))


class PortalOffersPage(AskingPage):
    """The hours that the van could come, read off the diary as it stands."""

    template = "portal/offers.html"

    def get(self, request: HttpRequest) -> HttpResponseBase:
        if "what" not in request.GET:
            return redirect("portal_ask")
        farm = self.farm()
        form = self.form_of(farm, request.GET)
        if not form.is_valid():
            return self.show_form(farm, form, 400)
        wish = form.wish(self.seat.user.name)
        asked = asked_for(farm, wish, keeps_told=True)
        offers = client_offers(asked, self.now, form.cleaned_data["weekdays"])
        return self.show(
            {
                "farm": farm,
                "wish": wish,
                "minutes": asked.minutes,
                "offers": offers,
                "is_late": all(offer.late for offer in offers),
                "sent": form.sent(),
                "hold_minutes": round(figures_of(farm.scope).planning.hold_minutes),
            }
        )


class PortalHoldPage(AskingPage):
    def post(self, request: HttpRequest) -> HttpResponseBase:
        farm = self.farm()
        today = local_day(self.now, farm.business.zone)
        form, place = self.form_of(farm, request.POST), PlaceForm(request.POST, today=today)
        if not form.is_valid():
            return self.show_form(farm, form, 400)
        try:
            if not place.is_valid():
                raise OfferIsGone("This hour is not free any more: choose one of these.")
            wish = form.wish(self.seat.user.name)
            held = hold_for_client(farm=farm, wish=wish, told=place.place(), at=self.now, by=self.seat.user)
        except OfferIsGone as gone:
            messages.warning(request, gone.message)
            return redirect(f"{reverse('portal_offers')}?{urlencode(form.sent())}")
        return redirect("portal_held", held.pk)


class PortalWishPage(AskingPage):
    """None of the hours will do: the wish is left with the business."""

    def post(self, request: HttpRequest) -> HttpResponseBase:
        farm = self.farm()
        form = self.form_of(farm, request.POST)
        if not form.is_valid():
            return self.show_form(farm, form, 400)
        if not ratelimit.consume(request, action="leave_wish"):
            too_many: HttpResponse = ratelimit.respond_429(request)
            return too_many
        leave_wish(farm=farm, wish=form.wish(self.seat.user.name), at=self.now, by=self.seat.user)
        words = (
            f"Your wish stands on the list of {self.seat.business}: they ring or plan it. It has no hour yet."
        )
        messages.success(request, words)
        return redirect("portal_home")
