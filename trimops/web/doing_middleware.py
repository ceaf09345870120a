"""Says who is at work while a request is answered, and from where: the audit trail writes it beside each change."""

import hashlib
from collections.abc import Callable, Sequence

from django.http import HttpRequest, HttpResponse

from trimops.accounts.models import ApiToken, User
from trimops.watch.doing import Doing, done_by, known_better
from trimops.web.client_address import client_address


class DoingMiddleware:
    """Stands behind the seat: by then it is known who asks, by a session or by a token."""

    def __init__(self, get_response: Callable[[HttpRequest], HttpResponse]) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponse:
        with done_by(_doing(request)):
            return self.get_response(request)

    def process_view(
        self, request: HttpRequest, view: object, args: Sequence[object], kwargs: dict[str, object]
    ) -> None:
        """Only now the address was resolved."""
        found = request.resolver_match
        token = getattr(request, "token", None)
        by_token = f", token {token.pk}" if isinstance(token, ApiToken) else ""
        known_better(via=f"{request.method} {found.view_name if found else ''}{by_token}")


def _doing(request: HttpRequest) -> Doing:
    return Doing(
        by=request.user.pk if isinstance(request.user, User) else None,
        via=str(request.method),
        seen_from=client_address(request) or "",
        session=_mark_of(request),
        request=str(getattr(request, "request_id", "")),
    )


def _mark_of(request: HttpRequest) -> str:
    """By it two changes are known to come from one sign-in; it opens nothing."""
    key = request.session.session_key
    return hashlib.sha256(key.encode()).hexdigest()[:16] if key else ""
