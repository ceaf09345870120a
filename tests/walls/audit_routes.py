"""The rows of tests/walls/routes.py for who changed what."""

from tests.walls.route import Route
from trimops.accounts.actions import Action
from trimops.accounts.roles import EVERYONE, STAFF, Role

OWNER = frozenset({Role.OWNER})
DESK = frozenset({Role.OWNER, Role.OFFICE})

CHANGES: dict[str, Route] = {
    "changes": Route(OWNER, only="get"),
    "visit_changes": Route(STAFF, {"pk": "planned"}, only="get"),
    "cow_changes": Route(STAFF, {"pk": "cow"}, only="get"),
    "farm_changes": Route(STAFF, {"pk": "farm"}, only="get"),
    "van_changes": Route(STAFF, {"pk": "van"}, only="get"),
    "invoice_changes": Route(DESK, {"pk": "invoice"}, only="get"),
    "payment_changes": Route(DESK, {"pk": "payment"}, only="get"),
    "price_list_changes": Route(DESK, {"pk": "price_list"}, only="get"),
    "member_changes": Route(OWNER, {"pk": "membership"}, only="get"),
}
CHANGES_API: dict[str, Route] = {"api_changes": Route(EVERYONE, does={"get": Action.SEE_CHANGES})}
