"""How long a sign-in lasts: not for ever, and not where nobody is heard of."""

from collections.abc import Callable
from datetime import timedelta

from allauth.account.internal.flows.login import get_authentication_records
from django.conf import settings
from django.contrib.auth import logout
from django.contrib.sessions.backends.base import UpdateError
from django.contrib.sessions.exceptions import SessionInterrupted
from django.http import HttpRequest, HttpResponse
from django.utils import timezone

from trimops.accounts.models import User
from trimops.accounts.services.mark_session import mark_session
from trimops.accounts.services.renew_session import renew_session
from trimops.watch.security_lines import note_security
from trimops.web.client_address import client_address

BEGAN, HEARD = "sign_in_began", "sign_in_heard"
# How exactly it is known when a session was used last: a busy one does not write at every request.
HEARD_EACH = timedelta(minutes=30)


class SessionLifeMiddleware:
    """Signs out who began too long ago (`SESSION_DAYS`), or was silent too long (`SESSION_IDLE_DAYS`).

    A sign-in whose person showed once more that it is they goes on under a new key.
    """

    def __init__(self, get_response: Callable[[HttpRequest], HttpResponse]) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponse:
        if isinstance(request.user, User):
            _judge(request)
        shown = _proofs(request)
        answer = self.get_response(request)
        if _proofs(request) > shown:
            note_security("proof_given", by=request.user.pk, seen_from=client_address(request) or "")
            # because: whoever read the key before must not have what was proven since (ASVS 7.2.4)
            renew_session(session=request.session)
        return answer


def _proofs(request: HttpRequest) -> int:
    """How often the person has shown it since they came in."""
    if not isinstance(request.user, User):
        return 0
    return sum(
        bool(each.get("reauthenticated")) for each in get_authentication_records(request, request.user)
    )


def _judge(request: HttpRequest) -> None:
    now = timezone.now().timestamp()
    began, heard = request.session.get(BEGAN), request.session.get(HEARD)
    if began is None or heard is None:
        # because: a session of before this rule began begins now
        _mark(request, {BEGAN: now, HEARD: now})
        return
    is_over = now - began > timedelta(days=settings.SESSION_DAYS).total_seconds()
    if is_over or now - heard > timedelta(days=settings.SESSION_IDLE_DAYS).total_seconds():
        note_security("sign_in_over", by=request.user.pk, seen_from=client_address(request) or "")
        logout(request)
    elif now - heard > HEARD_EACH.total_seconds():
        _mark(request, {HEARD: now})


def _mark(request: HttpRequest, marks: dict[str, float]) -> None:
    """Kept before the request is answered: where that fails, nothing was done yet, and it may be asked again."""
    try:
        mark_session(session=request.session, marks=marks)
    except UpdateError:
        raise SessionInterrupted("This sign-in was ended at the same moment.") from None
