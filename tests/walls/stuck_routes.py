"""The rows of tests/walls/routes.py for what got stuck, and for how a person is told things."""

from tests.walls.route import Route
from trimops.accounts.roles import STAFF, Role

OWNER = frozenset({Role.OWNER})

STUCK: dict[str, Route] = {
    "stuck": Route(OWNER, only="get"),
    "stuck_again": Route(OWNER, {"pk": "errand"}, answer=405),
    "stuck_leave": Route(OWNER, {"pk": "errand"}, answer=405),
    "own_ways": Route(STAFF),
}
