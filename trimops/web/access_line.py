"""One line and one count for each request, and an id by which all its lines are found."""

import logging
import time
from collections.abc import Callable

from django.conf import settings
from django.http import HttpRequest, HttpResponse

from trimops.settings.hide_secrets import hide_secrets
from trimops.watch.figures import note_request
from trimops.watch.marks import marked, request_id
from trimops.web.refused_line import note_refused
from trimops.web.seat import seat_of

log = logging.getLogger("trimops.access")

# The parts of our addresses that are keys; tests/trimops/web/test_access_line.py holds this against all addresses.
KEYS = frozenset({"secret", "token", "key", "uidb36"})
STATIC = "static"
NOWHERE = "none"


class AccessLineMiddleware:
    """Method, address without its keys, route, status, milliseconds, business. Never names, bodies or a query."""

    def __init__(self, get_response: Callable[[HttpRequest], HttpResponse]) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponse:
        started = time.perf_counter()
        number = request_id(request.headers.get("X-Request-ID"))
        request.request_id = number  # type: ignore[attr-defined]
        with marked(request_id=number):
            answer = self.get_response(request)
            _note(request, answer.status_code, time.perf_counter() - started)
        answer["X-Request-ID"] = number
        return answer


def _note(request: HttpRequest, status: int, seconds: float) -> None:
    route = _route_of(request)
    note_request(str(request.method), route, status, seconds)
    told: dict[str, object] = {
        "method": request.method,
        "path": hidden_path(request),
        "route": route,
        "status": status,
        "ms": round(seconds * 1000),
    }
    if seat := seat_of(request):
        told["business"] = seat.business.pk
    note_refused(request, status, route)
    # A page brings a dozen files, and nobody's trouble is found in them.
    log.log(logging.DEBUG if route == STATIC else logging.INFO, "request", extra={"told": told})


def hidden_path(request: HttpRequest) -> str:
    """The address without what opens it, on one line."""
    path = request.path
    found = request.resolver_match
    for name, value in (found.kwargs if found else {}).items():
        if name in KEYS:
            path = path.replace(str(value), "...")
    return hide_secrets(path)


def _route_of(request: HttpRequest) -> str:
    if request.path.startswith(settings.STATIC_URL):
        return STATIC
    found = request.resolver_match
    return found.view_name if found and found.view_name else NOWHERE
