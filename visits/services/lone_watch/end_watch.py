"""A watch is over, or goes on after a word that all is well; whoever was told before hears of it."""

from datetime import datetime

from django.db import transaction

from trimops.accounts.models import User
from trimops.outbox.domain.outgoing_states import Channel, OutgoingState, Topic
from trimops.outbox.models import Outgoing
from trimops.outbox.services.end_outgoing import Outcome, end_outgoing
from trimops.outbox.services.put_out import Message, put_out
from visits.domain.lone_watch.call_names import call_name, call_start, well_name
from visits.domain.lone_watch.watch_states import WatchEnd, WatchState
from visits.domain.lone_watch.watch_words import clock_words, well_mail
from visits.models import LoneWatch, Visit, WatchCall
from visits.selectors.lone_watch.open_watches import open_watch_of
from visits.services.lone_watch.call_somebody import farm_of
from visits.services.lone_watch.note_watch import note_watch

_DID = {
    WatchEnd.FINISHED: "finished the visit",
    WatchEnd.CALLED_OFF: "called the visit off, or put it off,",
}


@transaction.atomic
def end_watch(*, watch: LoneWatch, how: WatchEnd, because: str, at: datetime) -> LoneWatch:
    """Over since `at` (a phone without a network may say so later). `because`: a whole sentence, told to all who were
    told before. Ending twice changes nothing.
    """
    row = watch.locked()
    if row.is_over:
        return row
    say_all_is_well(watch=row, because=because, at=at)
    row.state, row.ended_how, row.ended_at, row.next_at = WatchState.ENDED.value, how.value, at, None
    row.save()
    note_watch(watch=row, words=because, at=at)
    return row


@transaction.atomic
def end_watch_of(*, visit: Visit, how: WatchEnd, at: datetime, by: User | None) -> LoneWatch | None:
    """The same for the open watch over a visit, if there is one. `at` may be the clock of a phone, heard of late."""
    watch = open_watch_of(visit.scope, visit)
    if watch is None:
        return None
    who, when = (by.name if by else "Somebody"), clock_words(at, at, visit.business.zone)
    return end_watch(watch=watch, how=how, because=f"{who} {_DID[how]} at {when}.", at=at)


def say_all_is_well(*, watch: LoneWatch, because: str, at: datetime) -> int:
    """Tell everybody who was told since the last word that all was well; how many people. The watch is locked.

    What has not gone yet does not go any more.
    """
    left = _leave_waiting(watch, at)
    told = WatchCall.objects.within(watch.scope).filter(watch=watch, is_trimmer=False)
    latest = {(call.phone, call.email): call for call in told.order_by("number")}
    if watch.watch_state is not WatchState.TOLD:
        return 0
    names = [call.name for call in latest.values() if _tell(watch, call, because, at, left)]
    if names:
        note_watch(watch=watch, words=f"Told that all is well: {', '.join(names)}.", at=at)
    return len(names)


def _tell(watch: LoneWatch, call: WatchCall, because: str, at: datetime, left: set[str]) -> bool:
    """By each way by which the alarm was told; where that never went, nothing is taken back. Whether any was."""
    subject, body = well_mail(watch.trimmer.name, because)
    is_told = False
    for channel, address in ((Channel.SMS, call.phone), (Channel.MAIL, call.email)):
        if address and call_name(watch.pk, call.number, channel.value) not in left:
            message = Message(
                channel=channel,
                topic=Topic.WATCH,
                address=address,
                subject=subject if channel is Channel.MAIL else "",
                body=body if channel is Channel.MAIL else f"{subject}. {because}",
                once=well_name(watch.pk, call.number, channel.value),
                farm_id=farm_of(watch),
            )
            is_told |= put_out(business_id=watch.business_id, message=message, at=at) is not None
    return is_told


def _leave_waiting(watch: LoneWatch, at: datetime) -> set[str]:
    """An alarm that waits for a mail server must not arrive after the word that all is well; names of those left."""
    left = set()
    rows = Outgoing.objects.within(watch.scope).filter(once__startswith=call_start(watch.pk))
    for outgoing in rows.filter(state=OutgoingState.WAITING.value).locked():
        end_outgoing(
            row=outgoing, outcome=Outcome(OutgoingState.LEFT, "All is well: not needed any more."), at=at
        )
        if not outgoing.may_have_gone:
            left.add(outgoing.once)
    return left
