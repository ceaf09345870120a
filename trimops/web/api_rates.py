"""How often the API may be asked: by a token or a person, and by a stranger's address."""

from django.conf import settings
from rest_framework.request import Request
from rest_framework.throttling import BaseThrottle
from rest_framework.views import APIView

from trimops.web.client_address import client_address
from trimops.web.counted import count_one

MINUTE = 60


class ApiRate(BaseThrottle):
    """So many calls a minute; the answer is 429 with Retry-After (RFC 6585, 4)."""

    left = MINUTE

    def allow_request(self, request: Request, view: APIView) -> bool:
        who, most = _who(request)
        if not most:
            return True
        count, self.left = count_one(who, MINUTE)
        return count <= most

    def wait(self) -> float:
        return self.left


def _who(request: Request) -> tuple[str, int]:
    """By what the seat's middleware found: the library has not looked yet, and does not count whom it refuses."""
    asked = request._request
    token = getattr(asked, "token", None)
    if token is not None:
        return f"api:token:{token.pk}", settings.API_RATE
    if asked.user.is_authenticated:
        return f"api:person:{asked.user.pk}", settings.API_RATE
    return f"api:stranger:{client_address(asked)}", settings.API_STRANGER_RATE
