"""What runs by itself, on one page."""

from django.http import HttpRequest, HttpResponse

from trimops.accounts.actions import Action
from trimops.web.scoped_page import ScopedPage
from visits.selectors.by_itself import daily_lines, parts_of


class ByItselfPage(ScopedPage):
    does = Action.SEE_BY_ITSELF
    template = "visits/by_itself.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        business = self.seat.business
        parts, days = parts_of(business, self.seat.allows, self.now), daily_lines(business, self.now)
        return self.show(
            {"parts": parts, "days": days, "faults": sum(part.mark == "urgent" for part in parts)}
        )
