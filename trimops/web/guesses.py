"""Whoever tries addresses with a key in them, one wrong after another, is made to wait."""

from collections.abc import Callable

from django.conf import settings
from django.http import HttpRequest, HttpResponse

from trimops.web.client_address import client_address
from trimops.web.counted import count_one, counted
from trimops.web.problem_pages import too_often_page

HOUR = 3600
KEYS = {"secret", "token"}
WRONG = {404, 409, 410}
WORDS = "Too many addresses that lead nowhere were asked for from your machine."


class GuessMiddleware:
    """Counts by machine what a wrong key was answered; the keys are too long to be guessed, this is for the noise."""

    def __init__(self, get_response: Callable[[HttpRequest], HttpResponse]) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponse:
        answer = self.get_response(request)
        if has_key(request):
            # because: a page that forgot to say so must not lie in a cache with its key
            answer.headers.setdefault("Cache-Control", "private, no-store")
        if answer.status_code in WRONG and settings.WRONG_LINKS_RATE and has_key(request):
            count_one(_who(request), HOUR)
        return answer

    def process_view(
        self, request: HttpRequest, view: object, args: object, kwargs: object
    ) -> HttpResponse | None:
        if not settings.WRONG_LINKS_RATE or not has_key(request):
            return None
        count, wait = counted(_who(request), HOUR)
        return too_often_page(request, WORDS, wait) if count >= settings.WRONG_LINKS_RATE else None


def has_key(request: HttpRequest) -> bool:
    """Whether the address that was asked for is a proof by itself."""
    return request.resolver_match is not None and bool(KEYS & request.resolver_match.kwargs.keys())


def _who(request: HttpRequest) -> str:
    return f"wrong-links:{client_address(request)}"
