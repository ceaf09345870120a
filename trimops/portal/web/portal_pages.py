"""The farm client's page: what is coming, what was done, what is theirs to do."""

from datetime import timedelta

from django.contrib import messages
from django.core.paginator import Paginator
from django.db.models import F
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from farms.models import Farm
from trimops.accounts.roles import Role
from trimops.kernel.clock import local_day
from trimops.kernel.errors import NotFound
from trimops.web.scoped_page import ScopedPage
from visits.domain.visit_states import VisitState
from visits.models import Block, Recheck, Visit
from visits.services.ask_visit import ask_visit
from visits.web.forms import VisitWishForm

FARM_CLIENT = frozenset({Role.FARM})
FARM_KEY = "farm_id"


class PortalHomePage(ScopedPage):
    roles = FARM_CLIENT
    template = "portal/home.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        farm = self.fetch(Farm, self.scope.farm_id or 0)
        visits = Visit.objects.within(self.scope)
        finished = visits.in_state(VisitState.FINISHED).order_by("-finished_at")
        return self.show(
            {
                "farm": farm,
                "coming": list(visits.open().order_by(F("planned_start").asc(nulls_last=True), "due_until")),
                "page": Paginator(finished, 20).get_page(request.GET.get("page")),
                "blocks": Block.objects.within(self.scope).filter(off_on__isnull=True).select_related("cow"),
                "rechecks": Recheck.objects.within(self.scope).open().select_related("cow"),
                "today": local_day(self.now, self.seat.business.zone),
            }
        )


class PortalAskPage(ScopedPage):
    """The farm asks for a visit."""

    roles = FARM_CLIENT
    template = "portal/ask.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        farm = self._farm()
        today = local_day(self.now, self.seat.business.zone)
        days = {"due_from": today, "due_until": today + timedelta(days=13)}
        first = {"asked_by": self.seat.user.name, "head_count": farm.routine_cows, **days}
        return self.show({"farm": farm, "form": VisitWishForm(farm=farm, initial=first)})

    def post(self, request: HttpRequest) -> HttpResponseBase:
        farm = self._farm()
        form = VisitWishForm(request.POST, farm=farm)
        if not form.is_valid():
            return self.show({"farm": farm, "form": form}, status=400)
        ask_visit(farm=farm, wish=form.wish(), at=self.now, by=self.seat.user)
        messages.success(request, "Your wish is noted; you will hear when the van comes.")
        return redirect("portal_home")

    def _farm(self) -> Farm:
        if self.scope.farm_id is None:
            raise NotFound("There is nothing at this address.")
        return self.fetch(Farm, self.scope.farm_id)
