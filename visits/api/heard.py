"""Where the page at the crush says that its phone has a network, is told what the watch asks, and answers it."""

from collections.abc import Mapping
from datetime import timedelta

from rest_framework.parsers import JSONParser
from rest_framework.request import Request
from rest_framework.response import Response

from trimops.accounts.roles import AT_THE_CRUSH
from trimops.web.refusals import Malformed
from trimops.web.scoped_api import ScopedApi
from visits.domain.lone_watch.watch_states import WatchState
from visits.models import LoneWatch, Visit
from visits.selectors.lone_watch.open_watches import asking_watches, open_watch_of
from visits.services.lone_watch.check_in import check_in
from visits.services.lone_watch.note_heard import note_heard

ANSWERS = {"more": False, "done": True}
MOST_SECONDS = 12 * 3600


class HeardApi(ScopedApi):
    """POST {} or {"well": "more" | "done", "ago": seconds since the tap}: {"watch": null | {"state", "farm",
    "asked_at", "answer_until"}}. Safe to repeat. `ago` is an age, so a clock that is wrong does no harm."""

    roles = AT_THE_CRUSH
    parser_classes = [JSONParser]

    def post(self, request: Request, pk: int) -> Response:
        visit = self.fetch(Visit, pk, "business")
        well, ago = _said(request.data)
        note_heard(scope=self.scope, trimmer=self.seat.user, at=self.now)
        if well:
            for watch in self._watches(visit):
                check_in(watch=watch, is_done=ANSWERS[well], at=self.now - ago, who=self.seat.user.name)
        return Response({"watch": _told(next(iter(self._watches(visit)), None))})

    def _watches(self, visit: Visit) -> list[LoneWatch]:
        """Those that ask whoever sits here, be it of the farm before; else the one over this visit."""
        asking = asking_watches(self.scope, self.seat.user)
        own = None if asking else open_watch_of(self.scope, visit)
        return asking or ([own] if own else [])


def _said(sent: object) -> tuple[str, timedelta]:
    """What was tapped ("" for nothing) and how long ago; Malformed (400) with the field."""
    said = sent if isinstance(sent, Mapping) else {}
    well, ago = said.get("well", ""), said.get("ago", 0)
    faults = []
    if well not in ("", *ANSWERS):
        faults.append(("well", f"one of {', '.join(ANSWERS)}"))
    if isinstance(ago, bool) or not isinstance(ago, int | float) or not 0 <= ago <= MOST_SECONDS:
        faults.append(("ago", f"seconds, 0 to {MOST_SECONDS}"))
    if faults:
        raise Malformed(faults)
    return str(well), timedelta(seconds=float(ago))


def _told(watch: LoneWatch | None) -> dict[str, object] | None:
    if watch is None:
        return None
    is_asking = watch.watch_state in (WatchState.ASKED, WatchState.TOLD)
    return {
        "state": watch.state,
        "farm": watch.visit.farm.name if watch.visit else "",
        "asked_at": watch.asked_at.isoformat() if is_asking and watch.asked_at else None,
        "answer_until": watch.answer_until.isoformat() if is_asking and watch.answer_until else None,
    }
