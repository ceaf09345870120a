"""What every page carries: the business's name and the ways to go, by part."""

from django.http import HttpRequest
from django.urls import reverse

from trimops.accounts.actions import Action
from trimops.accounts.roles import FarmRight
from trimops.web.seat import seat_of

# (words, name of the address, what opening it does). The order is the order on the page.
WAYS: tuple[tuple[str, str, Action], ...] = (
    ("This week", "this_week", Action.SEE_WEEKS),
    ("Visits", "visit_list", Action.SEE_DIARY),
    ("Farms", "farm_list", Action.SEE_EVERY_FARM),
    ("Kit", "kit", Action.SEE_KIT),
    ("Invoices", "invoice_list", Action.SEE_MONEY),
    ("By itself", "by_itself", Action.SEE_BY_ITSELF),
    ("My farm", "portal_home", Action.SEE_OWN_FARM),
    ("Ask", "portal_ask", Action.ASK_FOR_OWN_FARM),
    ("Cows", "portal_cows", Action.SEE_OWN_FARM),
    ("Reports", "portal_reports", Action.READ_OWN_REPORTS),
    ("Invoices", "portal_money", Action.READ_OWN_MONEY),
)


def page_frame(request: HttpRequest) -> dict[str, object]:
    """Context of base.html: `business`, `nav` as (words, address, is this it), `may` do what at the farm.

    `allows` says of each action whether this person may do it, by the action's name in small letters.
    """
    seat = seat_of(request)
    if seat is None:
        return {}
    found = [(words, reverse(name)) for words, name, action in WAYS if seat.allows(action)]
    # The longest: the pages of a farm client lie below the first of them.
    here = max((address for _, address in found if request.path.startswith(address)), key=len, default="")
    return {
        "business": seat.business,
        "seat": seat,
        "nav": [(words, address, address == here) for words, address in found],
        "allows": {action.name.lower(): seat.allows(action) for action in Action},
        "may": {right.value: seat.may(right) for right in FarmRight},
    }
