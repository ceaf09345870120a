"""The rows of tests/walls/routes.py for other programs and calendars outside."""

from tests.walls.route import Route
from trimops.accounts.roles import Role

OWNER = frozenset({Role.OWNER})
DRIVERS = frozenset({Role.OWNER, Role.TRIMMER})

OUTSIDE: dict[str, Route] = {
    "webhooks": Route(OWNER),
    "webhook_try": Route(OWNER, {"pk": "webhook"}, answer=405),
    "webhook_close": Route(OWNER, {"pk": "webhook"}, answer=405),
    "van_calendars": Route(DRIVERS, {"pk": "van"}),
    "outside_calendar_read": Route(DRIVERS, {"pk": "outside_calendar"}, answer=405),
    "outside_calendar_remove": Route(DRIVERS, {"pk": "outside_calendar"}, answer=405),
}
