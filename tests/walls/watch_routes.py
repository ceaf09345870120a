"""The rows of tests/walls/routes.py for the watch over lone work."""

from tests.walls.route import Route
from trimops.accounts.roles import Role

CRUSH = frozenset({Role.OWNER, Role.TRIMMER})

WATCH: dict[str, Route] = {
    "watch": Route(CRUSH),
    "watch_try": Route(CRUSH, answer=405),
    "watch_contact_new": Route(CRUSH),
    "watch_contact": Route(CRUSH, {"pk": "watch_contact"}),
    "lone_watch": Route(CRUSH, {"pk": "lone_watch"}, only="get"),
    "watch_well": Route(CRUSH, {"pk": "lone_watch"}, answer=405),
}
