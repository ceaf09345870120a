"""The evening's list."""

from django.http import HttpRequest, HttpResponse

from trimops.accounts.actions import Action
from trimops.web.scoped_page import ScopedPage
from visits.selectors.kit.tonight import tonight


class TonightPage(ScopedPage):
    """What to load, grind, wash, order, keep warm, count and use up before the vans go out."""

    does = Action.SEE_KIT
    template = "visits/kit/tonight.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        return self.show({"evening": tonight(self.seat.business, self.now)})
