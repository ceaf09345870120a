"""Puts the seat on each request and turns the clock to the business's zone."""

from collections.abc import Callable

from allauth.mfa.models import Authenticator
from allauth.mfa.utils import is_mfa_enabled
from django.contrib.auth.models import AnonymousUser
from django.http import HttpRequest, HttpResponse
from django.utils import timezone

from farms.selectors.seat import memberships_of, place_of
from trimops.accounts.models import ApiToken, User
from trimops.accounts.roles import STAFF
from trimops.accounts.services.note_token_use import note_token_use
from trimops.accounts.web.token_sign_in import bears_token, good_token
from trimops.web.client_address import client_address
from trimops.web.seat import Seat

BUSINESS_KEY = "business_id"
FARM_KEY = "farm_id"


class SeatMiddleware:
    """Closed by default: a request without a seat reaches only pages that ask for none."""

    def __init__(self, get_response: Callable[[HttpRequest], HttpResponse]) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponse:
        seat = _seat_by_token(request) if bears_token(request) else _seat_by_session(request)
        if seat is not None and _lacks_second_step(seat):
            # because: who has to set it up first is let in nowhere; the pages lead there (`ScopedPage`)
            request.wants_second_step, seat = seat.business.name, None  # type: ignore[attr-defined]
        request.seat = seat  # type: ignore[attr-defined]
        if seat is None:
            return self.get_response(request)
        with timezone.override(seat.business.zone):
            return self.get_response(request)


def _lacks_second_step(seat: Seat) -> bool:
    """Whether the business asks one of who works there, and this person has none. So do their programs wait: a token
    may be older than the rule, and made by who had the password alone.
    """
    if not seat.business.needs_second_step or seat.role not in STAFF:
        return False
    return not is_mfa_enabled(seat.user, [Authenticator.Type.TOTP, Authenticator.Type.WEBAUTHN])


def _seat_by_session(request: HttpRequest) -> Seat | None:
    if not isinstance(request.user, User):
        return None
    memberships = memberships_of(request.user)
    wanted = request.session.get(BUSINESS_KEY)
    for membership in sorted(memberships, key=lambda each: each.business_id != wanted):
        # because: a business whose farms are all closed to the person must not shut them out of another
        if place := place_of(membership, request.session.get(FARM_KEY)):
            return Seat(request.user, membership, membership.business, place.scope, place.rights)
    return None


def _seat_by_token(request: HttpRequest) -> Seat | None:
    """Whoever shows a token is judged by it alone, whatever session they have besides."""
    token = good_token(request)
    request.token = token  # type: ignore[attr-defined]
    request.user = token.user if token else AnonymousUser()
    if token is None:
        return None
    note_token_use(token=token, address=client_address(request), at=timezone.now())
    return _seat_of(token)


def _seat_of(token: ApiToken) -> Seat | None:
    place = place_of(token.membership, token.farm_key)
    # because: a token of a farm that was closed to its person must not turn to another of their farms
    if place is None or place.scope.farm_id != token.farm_key:
        return None
    return Seat(
        token.user, token.membership, token.membership.business, place.scope, place.rights, token.actions
    )
