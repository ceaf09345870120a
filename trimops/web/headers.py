"""What every answer says to the browser beside its content, whatever answered: the last word before it leaves."""

from collections.abc import Callable
from http import HTTPStatus
from typing import Final

from django.conf import settings
from django.http import HttpRequest, HttpResponse
from django.urls import reverse

KEPT_AWAY: Final = (
    *("accelerometer", "autoplay", "browsing-topics", "camera", "display-capture", "encrypted-media"),
    *(
        "fullscreen",
        "geolocation",
        "gyroscope",
        "hid",
        "idle-detection",
        "magnetometer",
        "microphone",
        "midi",
    ),
    *("payment", "picture-in-picture", "serial", "usb", "xr-spatial-tracking"),
)
OURS: Final = (
    "clipboard-write",
    "publickey-credentials-create",
    "publickey-credentials-get",
    "screen-wake-lock",
)
"""What our own pages ask for: copying a draft, passkeys, the crush page that stays awake."""
PERMISSIONS: Final = ", ".join([f"{name}=()" for name in KEPT_AWAY] + [f"{name}=(self)" for name in OURS])


class HeadersMiddleware:
    """No answer without a word on caches, on what the browser's machine may do, and on who may embed it.

    Signing out has the browser forget what it keeps of our pages; what the crush page keeps on the phone is not touched
    by that, it has its own way (sign_out.js).
    """

    def __init__(self, get_response: Callable[[HttpRequest], HttpResponse]) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponse:
        answer = self.get_response(request)
        told = answer.headers
        told.setdefault("Permissions-Policy", PERMISSIONS)
        told.setdefault("Cross-Origin-Resource-Policy", "same-origin")
        # because: what nobody thought of is more likely somebody's than everybody's
        told.setdefault("Cache-Control", "private, no-store")
        if settings.IS_HTTPS and _signed_out(request, answer):
            told["Clear-Site-Data"] = '"cache"'
        return answer


def _signed_out(request: HttpRequest, answer: HttpResponse) -> bool:
    is_gone = answer.status_code == HTTPStatus.FOUND and request.method == "POST"
    return is_gone and request.path == reverse("account_logout")
