"""Where the page at the crush says that its phone has a network, is told what the watch asks, and answers it."""

from datetime import timedelta

from rest_framework import serializers
from rest_framework.request import Request
from rest_framework.response import Response

from trimops.accounts.actions import Action
from trimops.api.fields import OneOf
from trimops.api.op import Op
from trimops.api.view import Api
from visits.domain.lone_watch.watch_states import WatchState
from visits.models import LoneWatch, Visit
from visits.selectors.lone_watch.open_watches import asking_watches, open_watch_of
from visits.services.lone_watch.check_in import check_in
from visits.services.lone_watch.note_heard import note_heard

ANSWERS = {"more": False, "done": True}
MOST_SECONDS = 12 * 3600


class HeardWord(serializers.Serializer):  # type: ignore[type-arg]
    """What was tapped, and how many seconds ago; empty: nothing."""

    well = serializers.ChoiceField(list(ANSWERS), default="", allow_blank=True)
    ago = serializers.FloatField(min_value=0, max_value=MOST_SECONDS, default=0)


class WatchBoxShown(serializers.Serializer):  # type: ignore[type-arg]
    """The watch that asks whoever sits here, or the one over this visit."""

    state = OneOf(WatchState)
    farm = serializers.CharField(allow_blank=True)
    asked_at = serializers.DateTimeField(allow_null=True)
    answer_until = serializers.DateTimeField(allow_null=True)


class HeardShown(serializers.Serializer):  # type: ignore[type-arg]
    """What the watch asks; null where nobody is watched over."""

    watch = WatchBoxShown(allow_null=True)


class HeardApi(Api):
    """Says that the phone at the crush has a network, and, where somebody tapped it, that they are well: `more`: 30
    minutes more, `done`: finished. `ago` is an age, so a clock that is wrong does no harm. Safe to repeat. A
    program must not say "well" for a person: the watch is no replacement for an emergency call and only notices
    that somebody did not check in."""

    ops = {
        "post": Op(
            Action.WORK_AT_CRUSH,
            "note_heard",
            "Say that the phone is heard",
            takes=HeardWord,
            shows=HeardShown,
        )
    }

    def post(self, request: Request, pk: int) -> Response:
        visit = self.fetch(Visit, pk, "business")
        said = self.content()
        well, ago = said["well"], timedelta(seconds=said["ago"])
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
