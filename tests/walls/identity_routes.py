"""The rows of tests/walls/routes.py for how people and programs come in."""

from tests.walls.route import Route
from trimops.accounts.roles import EVERYONE, Role

OWNER = frozenset({Role.OWNER})

IDENTITY: dict[str, Route] = {
    "own_programs": Route(EVERYONE),
    "api_page": Route(EVERYONE, only="get"),
    "api_try": Route(EVERYONE, only="get"),
    "own_program_revoke": Route(EVERYONE, answer=405),
    "programs": Route(OWNER, only="get"),
    "program_revoke": Route(OWNER, {"pk": "api_token"}, answer=405),
    "device_sign_out": Route(EVERYONE, answer=405),
    "part": Route(OWNER, {"pk": "membership"}),
    "invitation_again": Route(OWNER, {"pk": "invited"}, answer=405),
}
