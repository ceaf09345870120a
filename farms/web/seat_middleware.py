"""Puts the seat on each request and turns the clock to the business's zone."""

from collections.abc import Callable

from django.http import HttpRequest, HttpResponse
from django.utils import timezone

from farms.selectors.seat import memberships_of, place_of
from trimops.accounts.models import User
from trimops.web.seat import Seat

BUSINESS_KEY = "business_id"
FARM_KEY = "farm_id"


class SeatMiddleware:
    """Closed by default: a request without a seat reaches only pages that ask for none."""

    def __init__(self, get_response: Callable[[HttpRequest], HttpResponse]) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponse:
        seat = _find_seat(request)
        request.seat = seat  # type: ignore[attr-defined]
        if seat is None:
            return self.get_response(request)
        with timezone.override(seat.business.zone):
            return self.get_response(request)


def _find_seat(request: HttpRequest) -> Seat | None:
    if not isinstance(request.user, User):
        return None
    memberships = memberships_of(request.user)
    wanted = request.session.get(BUSINESS_KEY)
    for membership in sorted(memberships, key=lambda each: each.business_id != wanted):
        # because: a business whose farms are all closed to the person must not shut them out of another
        if place := place_of(membership, request.session.get(FARM_KEY)):
            return Seat(request.user, membership, membership.business, place.scope, place.rights)
    return None
