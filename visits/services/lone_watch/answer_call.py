"""Somebody who was asked or told answers by the link that they were sent."""

from datetime import datetime

from django.db import transaction

from trimops.kernel.errors import RuleBroken
from visits.domain.lone_watch.watch_states import CallAnswer, WatchEnd, WatchState
from visits.models import LoneWatch, WatchCall
from visits.services.lone_watch.check_in import check_in
from visits.services.lone_watch.end_watch import end_watch
from visits.services.lone_watch.note_watch import note_watch

OF_THE_TRIMMER = frozenset({CallAnswer.WELL_ON, CallAnswer.WELL_DONE})


class NotYoursToSay(RuleBroken):
    """An answer that this link does not give."""

    code = "not_yours_to_say"


@transaction.atomic
def answer_call(*, call: WatchCall, answer: CallAnswer, at: datetime) -> LoneWatch:
    """Keep the answer and do what it says; after the end it is only noted. NotYoursToSay: it is the other side's."""
    watch = call.watch.locked()
    if call.is_trimmer != (answer in OF_THE_TRIMMER):
        raise NotYoursToSay("This link cannot say that. Open the one in your newest message.")
    row = call.locked()
    row.answer, row.answered_at = answer.value, at
    row.save(update_fields=["answer", "answered_at"])
    if watch.is_over:
        note_watch(watch=watch, words=f"{call.name} answered: {answer.label}.", at=at)
        return watch
    if call.is_trimmer:
        return check_in(watch=watch, is_done=answer is CallAnswer.WELL_DONE, at=at, who=call.name)
    if answer is CallAnswer.FOUND:
        because = f"{call.name} has spoken to {watch.trimmer.name}: all is well."
        return end_watch(watch=watch, how=WatchEnd.FOUND, because=because, at=at)
    return _take_or_pass(watch, call, answer, at)


def _take_or_pass(watch: LoneWatch, call: WatchCall, answer: CallAnswer, at: datetime) -> LoneWatch:
    note_watch(watch=watch, words=f"{call.name} answered: {answer.label}.", at=at)
    if watch.watch_state is not WatchState.TOLD:
        return watch
    if answer is CallAnswer.TAKES:
        watch.taken_at, watch.taken_by = at, call.name
    elif not watch.taken_at:
        # The next one is told at once, unless somebody has taken it meanwhile.
        watch.told_at = None
    watch.next_at = at
    watch.save()
    return watch
