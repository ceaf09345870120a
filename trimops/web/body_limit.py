"""What is sent to us is refused by its size before a byte of it is read."""

from collections.abc import Callable
from typing import Final

from django.http import HttpRequest, HttpResponse

from trimops.web.problem_pages import too_large_page

MOST_BODY: Final = 6 * 1024 * 1024
"""Bytes: a file of 5 MB in its form. What takes less says so by itself."""


class BodyLimitMiddleware:
    """413 for a body that is said to be larger than `MOST_BODY`; the server reads no more than what is said."""

    def __init__(self, get_response: Callable[[HttpRequest], HttpResponse]) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponse:
        return too_large_page(request) if _is_too_large(request) else self.get_response(request)


def _is_too_large(request: HttpRequest) -> bool:
    told = str(request.META.get("CONTENT_LENGTH") or "0")
    return not told.isdecimal() or len(told) > len(str(MOST_BODY)) or int(told) > MOST_BODY
