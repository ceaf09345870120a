"""The farm client's first page, and which of their farms it is of."""

from django.contrib import messages
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from trimops.kernel.clock import local_day
from trimops.kernel.errors import NotFound
from trimops.portal.selectors.client_farms import farms_of
from trimops.portal.selectors.farm_today import farm_today
from trimops.portal.web.client_page import ClientPage
from trimops.portal.web.farm_seat import sit_at


class PortalHomePage(ClientPage):
    template = "portal/home.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        return self.show(
            {
                "farm": self.farm(),
                "story": farm_today(self.scope, self.now),
                "farm_count": len(farms_of(self.seat.user)),
                "today": local_day(self.now, self.seat.business.zone),
            }
        )


class PortalFarmsPage(ClientPage):
    """All the farms of a person who has several; one of them is sat at."""

    template = "portal/farms.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        return self.show({"accesses": farms_of(self.seat.user), "here": self.scope.farm_id})

    def post(self, request: HttpRequest) -> HttpResponseBase:
        if "farm" not in request.POST:
            return redirect("portal_farms")
        access = sit_at(request, self.seat.user, request.POST["farm"])
        if access is None:
            raise NotFound("There is nothing at this address.")
        messages.success(request, f"This is {access.farm} now.")
        return redirect("portal_home")
