"""Whether a message of the watch reached nobody."""

from trimops.outbox.domain.outgoing_states import OutgoingState
from trimops.outbox.models import Outgoing
from visits.domain.lone_watch.call_names import call_start
from visits.domain.lone_watch.watch_states import WatchState
from visits.models import LoneWatch, WatchCall


def is_last_call_lost(watch: LoneWatch) -> bool:
    """Whether others are being told, and all messages to the last of them were refused or tried in vain."""
    if watch.watch_state is not WatchState.TOLD or watch.told_at is None:
        return False
    last = WatchCall.objects.within(watch.scope).filter(watch=watch, is_trimmer=False).last()
    if last is None:
        return False
    rows = Outgoing.objects.within(watch.scope).filter(once__startswith=call_start(watch.pk, last.number))
    states = list(rows.values_list("state", flat=True))
    return bool(states) and set(states) == {OutgoingState.FAILED.value}


def call_of(outgoing: Outgoing) -> WatchCall | None:
    """The call that a message carries, None where it is the word that all is well, or its watch is gone."""
    parts = outgoing.once.split(":")
    if len(parts) != 5 or (parts[0], parts[2]) != ("watch", "call"):
        return None
    rows = WatchCall.objects.within(outgoing.scope).filter(watch_id=int(parts[1]), number=int(parts[3]))
    return rows.first()
