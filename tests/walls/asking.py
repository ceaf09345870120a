"""One question: by the whole program as a browser asks it, or straight at what answers the address."""

import re
from collections.abc import Iterator
from contextlib import contextmanager, nullcontext
from dataclasses import dataclass
from functools import cache
from itertools import count

from django.conf import settings
from django.contrib.messages.storage.cookie import CookieStorage
from django.contrib.sessions.backends.signed_cookies import SessionStore
from django.core.exceptions import PermissionDenied
from django.core.handlers.base import BaseHandler
from django.core.signals import request_finished
from django.db import close_old_connections, transaction
from django.http import Http404, HttpRequest, HttpResponseBase
from django.template import Template
from django.template.loaders.base import Loader
from django.test import RequestFactory, override_settings
from django.urls import ResolverMatch, resolve
from django.utils import timezone
from rest_framework.response import Response

from tests.walls.askers import Asker
from tests.walls.header_client import look_at_headers
from trimops.kernel.errors import NotFound, RuleBroken

READING = ("GET", "HEAD", "OPTIONS")
METHODS = ("GET", "HEAD", "POST", "PUT", "PATCH", "DELETE", "OPTIONS")
TOKEN = re.compile(rb'name="csrfmiddlewaretoken" value="\w+"')
_keys = count(1)


@dataclass(frozen=True)
class Told:
    """The status, where it leads, and the words; of a file no words."""

    status: int
    location: str
    words: bytes


class BlankPages(Loader):
    """Every page is blank but for the name of the right that is missing."""

    def get_template(self, template_name: str, skip: object = None) -> Template:
        return Template("{{ right.label }}", engine=self.engine)


def blank_pages() -> override_settings:
    """Within it pages are decided and read, and not drawn."""
    (engine,) = settings.TEMPLATES
    options = {**engine["OPTIONS"], "loaders": [f"{__name__}.BlankPages"]}
    return override_settings(TEMPLATES=[{**engine, "APP_DIRS": False, "OPTIONS": options}])


class Asking:
    """The program as a server runs it. What is asked changes nothing: it is taken back."""

    def __init__(self) -> None:
        self.program = BaseHandler()
        self.program.load_middleware()
        self.factory = RequestFactory()

    def whole(self, asker: Asker, method: str, address: str, body: bytes | None = None) -> Told:
        """Through every middleware, by the cookie or the token alone."""
        request = self._request(asker, method, address, body)
        if asker.cookie:
            request.COOKIES[settings.SESSION_COOKIE_NAME] = asker.cookie
        with taken_back():
            answer = self.program.get_response(request)
            look_at_headers(answer, address)
            return _told(answer)

    def straight(self, asker: Asker, method: str, address: str, body: bytes | None = None) -> Told:
        """At the view, with the seat that the middleware gave this asker."""
        request, match = self._request(asker, method, address, body), resolved(address)
        request.user, request.seat, request.token = asker.user, asker.seat, asker.token
        request.session, request.resolver_match = SessionStore(), match
        request._messages = CookieStorage(request)
        zone = asker.seat.business.zone if asker.seat else timezone.get_default_timezone()
        try:
            with timezone.override(zone), nullcontext() if method in READING else taken_back():
                return _told(match.func(request, *match.args, **match.kwargs))
        except PermissionDenied as fault:
            return Told(403, "", str(fault).encode())
        except (NotFound, Http404) as fault:
            return Told(404, "", str(fault).encode())
        except RuleBroken as fault:
            return Told(409, "", str(fault).encode())

    def _request(self, asker: Asker, method: str, address: str, body: bytes | None) -> HttpRequest:
        headers = {"HTTP_AUTHORIZATION": f"Bearer {asker.text}"} if asker.text else {}
        if body is not None:
            headers |= {"HTTP_IF_MATCH": "*", "HTTP_IDEMPOTENCY_KEY": f"walk-{next(_keys)}"}
            request = self.factory.generic(method, address, body, "application/json", **headers)
        else:
            request = self.factory.generic(method, address, **headers)
        request._dont_enforce_csrf_checks = True
        return request


@contextmanager
def taken_back() -> Iterator[None]:
    with transaction.atomic():
        yield
        transaction.set_rollback(True)


@cache
def resolved(address: str) -> ResolverMatch:
    return resolve(address)


def _told(answer: HttpResponseBase) -> Told:
    if isinstance(answer, Response) and not answer.is_rendered:
        answer.render()
    words = b"" if answer.streaming else TOKEN.sub(b"", answer.content)
    request_finished.disconnect(close_old_connections)  # because: the connection is the test's
    answer.close()
    request_finished.connect(close_old_connections)
    return Told(answer.status_code, answer.headers.get("Location", ""), words)
