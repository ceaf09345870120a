"""The herd's feet over the years, for the farm itself."""

from django.http import HttpRequest, HttpResponse

from trimops.accounts.actions import Action
from trimops.portal.web.client_page import ClientPage
from visits.selectors.herd_view import herd_view


class PortalHerdPage(ClientPage):
    does = Action.READ_OWN_REPORTS
    template = "portal/herd.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        farm = self.farm()
        return self.show({"farm": farm, "herd": herd_view(self.scope, farm, self.now)})
