"""The rows of tests/walls/routes.py for what is kept of a person, and how long things are kept."""

from tests.walls.route import Route
from trimops.accounts.roles import EVERYONE, Role

OWNER = frozenset({Role.OWNER})
DESK = frozenset({Role.OWNER, Role.OFFICE})

PROTECTION: dict[str, Route] = {
    "retention": Route(OWNER),
    "own_data": Route(EVERYONE, only="get"),
    "own_data_all": Route(EVERYONE, answer=405),
    "person_data": Route(OWNER, {"pk": "membership"}, only="get"),
    "person_data_all": Route(OWNER, {"pk": "membership"}, answer=405),
    "person_erase": Route(OWNER, {"pk": "membership"}),
    "contact_data_all": Route(DESK, {"farm_pk": "farm", "pk": "contact"}, answer=405),
}
