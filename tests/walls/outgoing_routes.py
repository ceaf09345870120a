"""The rows of tests/walls/routes.py for what leaves the house."""

from tests.walls.route import Route
from trimops.accounts.roles import STAFF

OUTGOING: dict[str, Route] = {
    "outgoing_list": Route(STAFF, only="get"),
    "outgoing_now": Route(STAFF, answer=405),
    "outgoing": Route(STAFF, {"pk": "outgoing"}, only="get"),
    "outgoing_again": Route(STAFF, {"pk": "outgoing"}, answer=405),
    "outgoing_leave": Route(STAFF, {"pk": "outgoing"}, answer=405),
}
