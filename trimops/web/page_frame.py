"""What every page carries: the business's name and the ways to go, by part."""

from django.http import HttpRequest
from django.urls import reverse

from trimops.accounts.roles import Role
from trimops.web.seat import seat_of

# (words, name of the address, roles). The order is the order on the page.
WAYS: tuple[tuple[str, str, frozenset[Role]], ...] = (
    ("This week", "this_week", frozenset({Role.OWNER, Role.TRIMMER, Role.OFFICE})),
    ("Visits", "visit_list", frozenset({Role.OWNER, Role.TRIMMER, Role.OFFICE})),
    ("Farms", "farm_list", frozenset({Role.OWNER, Role.TRIMMER, Role.OFFICE})),
    ("Invoices", "invoice_list", frozenset({Role.OWNER, Role.OFFICE})),
    ("People", "people", frozenset({Role.OWNER})),
    ("My farm", "portal_home", frozenset({Role.FARM})),
)


def page_frame(request: HttpRequest) -> dict[str, object]:
    """Context of base.html: `business` and `nav` as (words, address, is this it)."""
    seat = seat_of(request)
    if seat is None:
        return {}
    found = [(words, reverse(name)) for words, name, roles in WAYS if seat.role in roles]
    here = request.path
    return {
        "business": seat.business,
        "seat": seat,
        "nav": [(words, address, here.startswith(address)) for words, address in found],
    }
