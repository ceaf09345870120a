"""What runs by itself, on one page."""

from django.http import HttpRequest, HttpResponse

from trimops.accounts.roles import STAFF, Role
from trimops.web.scoped_page import ScopedPage
from visits.selectors.by_itself import daily_lines, parts_of


class ByItselfPage(ScopedPage):
    roles = STAFF
    template = "visits/by_itself.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        business = self.seat.business
        parts, days = parts_of(business, Role(self.seat.role), self.now), daily_lines(business, self.now)
        return self.show(
            {"parts": parts, "days": days, "faults": sum(part.mark == "urgent" for part in parts)}
        )
