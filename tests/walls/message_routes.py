"""The rows of tests/walls/routes.py for what farms are told by themselves."""

from tests.walls.route import Route
from trimops.accounts.roles import STAFF, Role

DESK = frozenset({Role.OWNER, Role.OFFICE})
MESSAGES: dict[str, Route] = {
    "messages": Route(DESK),
    "message": Route(DESK, fixed={"kind": "booked"}),
    "contact": Route(STAFF, {"farm_pk": "farm", "pk": "contact"}),
}
MESSAGE_LINKS = {"stop_messages", "list_by_link"}
"""The address itself is the proof."""
