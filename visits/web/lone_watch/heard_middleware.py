"""Whoever is watched over and opens anything is heard."""

import logging
from collections.abc import Callable

from django.db import DatabaseError
from django.http import HttpRequest, HttpResponse
from django.utils import timezone

from trimops.accounts.actions import Action
from trimops.web.seat import seat_of
from visits.services.lone_watch.note_heard import note_heard
from visits.web.lone_watch.watch_notices import watches_read

log = logging.getLogger(__name__)


class HeardMiddleware:
    """After the answer, so that a watch that it began has been heard of as well. Needs the seat."""

    def __init__(self, get_response: Callable[[HttpRequest], HttpResponse]) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponse:
        answer = self.get_response(request)
        seat = seat_of(request)
        # A program that asks in somebody's name says nothing of how they are.
        if seat is not None and seat.token_scopes is None and seat.allows(Action.KEEP_WATCH):
            try:
                note_heard(
                    scope=seat.scope,
                    trimmer=seat.user,
                    at=timezone.now(),
                    watches=watches_read(request),
                )
            except DatabaseError:  # because: what the page did stands, and must be answered
                log.exception("not noted that %s was heard", seat.user.pk)
        return answer
