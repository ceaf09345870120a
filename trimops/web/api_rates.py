"""How often the API may be asked: by a token or a person, and by a stranger's address.

What costs much is counted by person, with the pages that do the same.
"""

from django.conf import settings
from rest_framework.request import Request
from rest_framework.throttling import BaseThrottle
from rest_framework.views import APIView

from trimops.web.client_address import client_address
from trimops.web.counted import count_one
from trimops.web.page_rates import MINUTE, cost_wait


class ApiRate(BaseThrottle):
    """So many calls a minute; the answer is 429 with Retry-After (RFC 6585, 4)."""

    left: float = MINUTE

    def allow_request(self, request: Request, view: APIView) -> bool:
        who, most = _who(request)
        if most:
            count, self.left = count_one(who, MINUTE)
            if count > most:
                return False
        return self._is_cheap_enough(request, view)

    def _is_cheap_enough(self, request: Request, view: APIView) -> bool:
        cost = getattr(view, "costs", {}).get((request.method or "").lower())
        person = request._request.user.pk
        wait = cost_wait(cost, person) if cost and person else 0
        self.left = wait or self.left
        return not wait

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
