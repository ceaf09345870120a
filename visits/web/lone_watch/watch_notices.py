"""The line on every page that asks somebody whether all is well. Named in the settings."""

from collections.abc import Sequence

from django.http import HttpRequest
from django.utils.functional import SimpleLazyObject

from trimops.accounts.actions import Action
from trimops.web.seat import seat_of
from visits.models import LoneWatch
from visits.selectors.lone_watch.open_watches import asks, watches_of

TEMPLATE = "visits/watch/_asks.html"
READ = "open_watches_read"


def watch_notices(request: HttpRequest) -> dict[str, object]:
    """Context of base.html: `notices`, each with the `template` that shows its `it`. Read only when drawn."""
    seat = seat_of(request)
    if seat is None or not seat.allows(Action.KEEP_WATCH):
        return {}

    def notices() -> list[dict[str, object]]:
        read = list(watches_of(seat.scope, seat.user))
        # Kept for who notes afterwards that this person was heard: each page asks once.
        setattr(request, READ, read)
        return [{"template": TEMPLATE, "it": watch} for watch in read if asks(watch)]

    return {"notices": SimpleLazyObject(notices)}


def watches_read(request: HttpRequest) -> Sequence[LoneWatch] | None:
    """The open watches that the page has read; None where it drew none."""
    found: Sequence[LoneWatch] | None = getattr(request, READ, None)
    return found
