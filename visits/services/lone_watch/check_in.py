"""The trimmer says that all is well."""

from datetime import datetime

from django.db import transaction

from visits.domain.lone_watch.watch_states import WatchEnd, WatchState
from visits.domain.lone_watch.watch_step import MORE
from visits.models import LoneWatch
from visits.services.lone_watch.end_watch import end_watch, say_all_is_well
from visits.services.lone_watch.note_watch import note_watch


@transaction.atomic
def check_in(*, watch: LoneWatch, is_done: bool, at: datetime, who: str) -> LoneWatch:
    """Said at `at`, by `who`: `is_done` ends the watch, else it asks again in 30 minutes. Whoever was told hears of it.

    Said twice, or after the end, nothing changes; a word from before the last one is not one of later.
    """
    if is_done:
        because = f"{who} said that all is well, and that the work is finished."
        return end_watch(watch=watch, how=WatchEnd.WELL, because=because, at=at)
    row = watch.locked()
    if row.is_over or (row.well_until is not None and row.well_until >= at + MORE):
        return row
    if row.asked_at is not None and at < row.asked_at:
        # because: it was said on a phone without a network, before he was asked, and says nothing of what came after
        note_watch(watch=row, words=f"{who} had said that all is well, before the question.", at=at)
        return row
    because = f"{who} said that all is well, and works on for 30 minutes."
    note_watch(watch=row, words=because, at=at)
    say_all_is_well(watch=row, because=because, at=at)
    go_on_watching(row, at)
    row.well_until = at + MORE
    row.save()
    return row


def go_on_watching(row: LoneWatch, at: datetime) -> None:
    """Back to the beginning of what is done when nobody answers; looked at anew at `at`. The caller saves."""
    row.state, row.next_at = WatchState.WATCHING.value, at
    row.asked_at = row.answer_until = row.told_at = row.taken_at = None
    row.tellings, row.taken_by, row.was_away = 0, "", False
