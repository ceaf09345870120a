"""What every page carries: the business's name and the ways to go, by part."""

from django.http import HttpRequest
from django.urls import reverse

from trimops.accounts.roles import FarmRight, Role
from trimops.web.seat import Seat, seat_of

CLIENT = frozenset({Role.FARM})
# (words, name of the address, roles). The order is the order on the page.
WAYS: tuple[tuple[str, str, frozenset[Role]], ...] = (
    ("This week", "this_week", frozenset({Role.OWNER, Role.TRIMMER, Role.OFFICE})),
    ("Visits", "visit_list", frozenset({Role.OWNER, Role.TRIMMER, Role.OFFICE})),
    ("Farms", "farm_list", frozenset({Role.OWNER, Role.TRIMMER, Role.OFFICE})),
    ("Kit", "kit", frozenset({Role.OWNER, Role.TRIMMER, Role.OFFICE})),
    ("Invoices", "invoice_list", frozenset({Role.OWNER, Role.OFFICE})),
    ("By itself", "by_itself", frozenset({Role.OWNER, Role.TRIMMER, Role.OFFICE})),
    ("My farm", "portal_home", CLIENT),
    ("Ask", "portal_ask", CLIENT),
    ("Cows", "portal_cows", CLIENT),
    ("Reports", "portal_reports", CLIENT),
    ("Invoices", "portal_money", CLIENT),
)
# What a farm client needs for a way; without it the way is not shown.
NEEDED = {
    "portal_ask": FarmRight.ASKS_VISITS,
    "portal_reports": FarmRight.READS_REPORTS,
    "portal_money": FarmRight.SEES_MONEY,
}


def page_frame(request: HttpRequest) -> dict[str, object]:
    """Context of base.html: `business`, `nav` as (words, address, is this it), and `may` do what at the farm."""
    seat = seat_of(request)
    if seat is None:
        return {}
    found = [(words, reverse(name)) for words, name, roles in WAYS if _is_open(seat, name, roles)]
    # The longest: the pages of a farm client lie below the first of them.
    here = max((address for _, address in found if request.path.startswith(address)), key=len, default="")
    return {
        "business": seat.business,
        "seat": seat,
        "nav": [(words, address, address == here) for words, address in found],
        "may": {right.value: seat.may(right) for right in FarmRight},
    }


def _is_open(seat: Seat, name: str, roles: frozenset[Role]) -> bool:
    needed = NEEDED.get(name)
    return seat.role in roles and (needed is None or seat.may(needed))
