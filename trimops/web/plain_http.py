"""A program that asks without HTTPS is refused, not led on: else its token goes in the clear each time, unseen."""

from collections.abc import Callable
from typing import Final

from django.conf import settings
from django.http import HttpRequest, HttpResponse, JsonResponse

from trimops.watch.security_lines import note_security
from trimops.web.client_address import client_address
from trimops.web.problems import PROBLEM, problem_of

FOR_PROGRAMS: Final = ("/api/", "/feeds/")
DETAIL: Final = (
    "This address is open by https alone. What was sent could be read on its way: change its secrets."
)


class PlainHttpMiddleware:
    """Where the site is behind HTTPS: 403 for plain HTTP at what programs ask. People's browsers are led to HTTPS."""

    def __init__(self, get_response: Callable[[HttpRequest], HttpResponse]) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponse:
        if not settings.IS_HTTPS or request.is_secure() or not request.path.startswith(FOR_PROGRAMS):
            return self.get_response(request)
        note_security("plain_http", seen_from=client_address(request) or "")
        body = problem_of(403, "https_only", DETAIL)
        return JsonResponse(body, status=403, content_type=PROBLEM)
