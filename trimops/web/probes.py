"""What machines ask of this process: is it alive, is it ready, what are its figures.

Answered before everything else (the first middleware): a load balancer asks by an internal number, without HTTPS
and without a name in TRIMOPS_ALLOWED_HOSTS, and must get an answer instead of a redirect or "bad request". It is
safe there because these answers read no session, name no business, and no address in them comes from the request.
"""

from collections.abc import Callable
from hmac import compare_digest

from django.conf import settings
from django.http import Http404, HttpRequest, HttpResponse, HttpResponseNotAllowed, JsonResponse
from django.utils import timezone

from trimops.watch.figures import CONTENT_TYPE, figures_now
from trimops.web.figures_read import gauges_now
from trimops.web.ready import what_is_not_ready

LIVE, READY, METRICS = "/health/live", "/health/ready", "/metrics"
Answer = Callable[[HttpRequest], HttpResponse]


class ProbeMiddleware:
    """Answers the three addresses; all others go on."""

    def __init__(self, get_response: Answer) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponse:
        asked = _ANSWERS.get(request.path.removesuffix("/"))
        if asked is None:
            return self.get_response(request)
        if request.method not in ("GET", "HEAD"):
            return HttpResponseNotAllowed(["GET", "HEAD"])
        try:
            answer = asked(request)
        except Http404:
            # As any address that is not there, in the words of the rest.
            return self.get_response(request)
        answer["Cache-Control"] = "no-store"
        _harden(answer)
        answer["Content-Length"] = str(len(answer.content))
        return answer


def _harden(answer: HttpResponse) -> None:
    """What the later middleware says of all other answers."""
    answer["X-Content-Type-Options"] = "nosniff"
    answer["Content-Security-Policy"] = "default-src 'none'; frame-ancestors 'none'"
    answer["Referrer-Policy"] = settings.SECURE_REFERRER_POLICY
    if settings.IS_HTTPS:
        answer["Strict-Transport-Security"] = f"max-age={settings.SECURE_HSTS_SECONDS}; includeSubDomains"


def live(request: HttpRequest) -> HttpResponse:
    """200 as long as this process answers; asks nothing of anybody."""
    return JsonResponse({"status": "ok"})


def ready(request: HttpRequest) -> HttpResponse:
    """200 where work can be done, else 503: {"status", "parts": {name: "ok" or what fails}}."""
    parts = what_is_not_ready(timezone.now())
    is_ready = all(fault == "" for fault in parts.values())
    told = {name: fault or "ok" for name, fault in parts.items()}
    return JsonResponse(
        {"status": "ok" if is_ready else "fails", "parts": told}, status=200 if is_ready else 503
    )


def metrics(request: HttpRequest) -> HttpResponse:
    """The figures, to whoever bears the token; there is nothing here for others, nor where no token is set."""
    given = request.headers.get("Authorization", "").removeprefix("Bearer ")
    if not settings.METRICS_TOKEN or not compare_digest(given.encode(), settings.METRICS_TOKEN.encode()):
        raise Http404
    return HttpResponse(figures_now(gauges_now), content_type=CONTENT_TYPE)


_ANSWERS: dict[str, Answer] = {LIVE: live, READY: ready, METRICS: metrics}
