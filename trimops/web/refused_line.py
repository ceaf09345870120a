"""What was refused, told to whoever inquires: who, from where, at which route. Never the address itself."""

from http import HTTPStatus
from typing import Final

from django.http import HttpRequest

from trimops.accounts.models import User
from trimops.watch.security_lines import note_security
from trimops.web.client_address import client_address
from trimops.web.guesses import has_key
from trimops.web.seat import seat_of

REFUSED: Final = {
    HTTPStatus.UNAUTHORIZED,
    HTTPStatus.FORBIDDEN,
    HTTPStatus.REQUEST_ENTITY_TOO_LARGE,
    HTTPStatus.TOO_MANY_REQUESTS,
}
MALFORMED: Final = {HTTPStatus.BAD_REQUEST, HTTPStatus.UNPROCESSABLE_ENTITY}
GONE: Final = {HTTPStatus.NOT_FOUND, HTTPStatus.CONFLICT, HTTPStatus.GONE}


def note_refused(request: HttpRequest, status: int, route: str) -> None:
    """A line of `trimops.security` for an answer that says no; nothing for any other."""
    found = request.resolver_match
    if status in REFUSED:
        event = "refused"
    elif status in GONE and has_key(request):
        event = "wrong_key"
    elif status == HTTPStatus.NOT_FOUND and found is not None and seat_of(request) is not None:
        event = "not_there"
    elif status in MALFORMED:
        event = "input_refused"
    elif status == HTTPStatus.CONFLICT:
        event = "rule_refused"
    else:
        return
    user, seat = getattr(request, "user", None), seat_of(request)
    told: dict[str, object] = {"status": int(status), "method": str(request.method), "route": route}
    if seat is not None:
        told |= {"business": seat.business.pk, "role": str(seat.role)}
    if (token := getattr(request, "token", None)) is not None:
        # because: what is named a token is hidden in every line
        told["program"] = token.pk
    by = user.pk if isinstance(user, User) else None
    note_security(event, by=by, seen_from=client_address(request) or "", **told)
